/** What is doubtful about the order; cells of this workbook can be gone to, others are named. */
import { useMemo } from "react";
import type { FileFinding } from "../../app/orders/orderJobs";
import { placeName } from "../../core/base/cell";
import type { Finding } from "../../core/base/finding";
import { foldFindings } from "../mend/foldFindings";
import { FoldedFinding } from "../mend/FoldedFinding";
import { useSharedStyles } from "../parts/parts.styles";

type FindingsPartProps = {
  readonly findings: readonly FileFinding[];
  /** This workbook's name. */
  readonly own: string;
};

export function FindingsPart({ findings, own }: FindingsPartProps) {
  const shared = useSharedStyles();
  const levels = useMemo(
    () => foldFindings(findings.map((each) => shownHere(each, own))),
    [findings, own],
  );
  return (
    <ul className={`${shared.list} ${shared.stack}`}>
      {levels.flatMap(({ level, folds }) =>
        folds.map((fold) => (
          <FoldedFinding key={`${level} ${fold.message}`} level={level} fold={fold} />
        )),
      )}
    </ul>
  );
}

/** A cell of another workbook is named, since it cannot be gone to. */
function shownHere({ file, finding }: FileFinding, own: string): Finding {
  if (file === "" || file === own) return finding;
  const where = finding.place === null ? file : `${file}, ${placeName(finding.place)}`;
  return { ...finding, place: null, message: `${where}: ${finding.message}` };
}
