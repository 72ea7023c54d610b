/** What is wrong or doubtful, each once, the worst first. */
import { mergeClasses } from "@fluentui/react-components";
import { useMemo } from "react";
import type { Finding } from "../../core/base/finding";
import { foldFindings } from "../mend/foldFindings";
import { FoldedFinding } from "../mend/FoldedFinding";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { useMore } from "../parts/useMore";

export type FindingListProps = {
  readonly findings: readonly Finding[];
  /** Whether they are of several jobs: what is said of one alone then names it. */
  readonly ofAll?: boolean;
};

const firstFolds = 12;

export function FindingList({ findings, ofAll = false }: FindingListProps) {
  const shared = useSharedStyles();
  const folds = useMemo(
    () =>
      foldFindings(findings).flatMap(({ level, folds: ofLevel }) =>
        ofLevel.map((fold) => {
          const [first, ...others] = fold.findings;
          const job = ofAll && others.length === 0 ? (first?.job ?? "") : "";
          const isNamed = fold.message.includes(job);
          const message = isNamed ? fold.message : `${job}: ${fold.message}`;
          return { level, fold: { ...fold, message } };
        }),
      ),
    [findings, ofAll],
  );
  const more = useMore(folds, firstFolds);
  if (folds.length === 0) return null;
  return (
    <>
      <ul className={mergeClasses(shared.list, shared.stack)} aria-label="What to know">
        {more.shown.map(({ level, fold }) => (
          <FoldedFinding key={fold.message} level={level} fold={fold} />
        ))}
      </ul>
      {more.left === 0 ? null : (
        <SmallButton onClick={more.showMore}>Show more ({countText(more.left)})</SmallButton>
      )}
    </>
  );
}
