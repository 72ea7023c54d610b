/** Findings gathered for a person: by what must be done, the same words said once. */
import { findingLevels, type Finding, type FindingLevel } from "../../core/base/finding";

/** One message and every cell it is about, in the order of the cells. */
export type Fold = { readonly message: string; readonly findings: readonly Finding[] };

export type FoldedLevel = {
  readonly level: FindingLevel;
  readonly folds: readonly Fold[];
  /** How many findings the folds hold. */
  readonly count: number;
};

/** Stops first, then warnings, then notes; a level without findings is left out. */
export const foldFindings = (findings: readonly Finding[]): readonly FoldedLevel[] =>
  findingLevels.flatMap((level) => {
    const folds = new Map<string, Finding[]>();
    for (const finding of findings) {
      if (finding.level !== level) continue;
      const fold = folds.get(finding.message);
      if (fold === undefined) folds.set(finding.message, [finding]);
      else fold.push(finding);
    }
    const all = [...folds].map(([message, folded]) => ({ message, findings: folded }));
    const count = all.reduce((sum, fold) => sum + fold.findings.length, 0);
    return all.length === 0 ? [] : [{ level, folds: all, count }];
  });
