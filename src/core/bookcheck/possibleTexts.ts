/** The texts that a formula can answer, so far as its tree tells. */
import { normalName } from "../formulas/names";
import type { FormulaNode } from "../formulas/tree";
import type { KitBook, OpeningType } from "../kitbook/kitBook";

export type PossibleTexts = {
  readonly texts: readonly string[];
  /** Whether there may be others: a text that is put together, or a field. */
  readonly mayBeOthers: boolean;
};

/** Follows choices, charts and sizes. Empty texts are left out: they name nothing. */
export function possibleTexts(node: FormulaNode, type: OpeningType, book: KitBook): PossibleTexts {
  const texts = new Set<string>();
  const visited = new Set<string>();
  let mayBeOthers = false;
  const visit = (part: FormulaNode | undefined): void => {
    switch (part?.kind) {
      case "text":
        texts.add(part.value);
        return;
      case "number":
        texts.add(String(part.value));
        return;
      case "call":
        if (part.function === "IF") part.arguments.slice(1).forEach(visit);
        else if (part.function === "IFS")
          part.arguments.filter((_, at) => at % 2 === 1).forEach(visit);
        else if (part.function === "SWITCH") switchAnswers(part.arguments).forEach(visit);
        else mayBeOthers = true;
        return;
      case "chart": {
        const wanted = normalName(part.chart);
        const chart = book.charts.find(({ name }) => normalName(name) === wanted);
        for (const { value } of chart?.entries ?? []) if (value !== null) texts.add(String(value));
        return;
      }
      case "name": {
        if (visited.has(part.name)) return;
        visited.add(part.name);
        const size = type.sizes.find(({ name }) => normalName(name) === part.name);
        if (size === undefined) mayBeOthers = true;
        else visit(size.formula.compiled.formula.tree);
        return;
      }
      case undefined:
        return;
      default:
        mayBeOthers = true;
    }
  };
  visit(node);
  return { texts: [...texts].filter((text) => text.trim() !== ""), mayBeOthers };
}

/** The answers of a SWITCH: after each case, and the last argument where it stands alone. */
const switchAnswers = (taken: readonly FormulaNode[]): readonly FormulaNode[] =>
  taken.filter(
    (_, at) => at > 0 && (at % 2 === 0 || (at === taken.length - 1 && taken.length % 2 === 0)),
  );
