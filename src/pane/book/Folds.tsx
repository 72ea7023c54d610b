/** Findings as cards, the same words once, with a button for each cell. */
import type { Finding } from "../../core/base/finding";
import { foldFindings } from "../mend/foldFindings";
import { FoldedFinding } from "../mend/FoldedFinding";
import { MoreList } from "./MoreList";

export const Folds = ({ findings }: { readonly findings: readonly Finding[] }) =>
  foldFindings(findings).map(({ level, folds }) => (
    <MoreList key={level} items={folds}>
      {(fold) => <FoldedFinding key={fold.message} level={level} fold={fold} />}
    </MoreList>
  ));
