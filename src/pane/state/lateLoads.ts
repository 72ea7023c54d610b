/**
 * The check of hanging loads, which most workbooks do without: it comes when the first one with rates
 * is counted.
 */
import type { EnteredLoads } from "../../app/pricing/enteredLoads";
import { ratesIn } from "../../app/reading/inputs";
import type { SourceBlock } from "../../app/reading/sourceBlocks";

export type LateLoads = {
  /** Resolves once `entered` can answer for these blocks. */
  readonly ready: (blocks: readonly SourceBlock[]) => Promise<void>;
  readonly entered: EnteredLoads;
};

export function lateLoads(): LateLoads {
  let check: EnteredLoads | null = null;
  return {
    ready: async (blocks) => {
      if (check !== null || ratesIn(blocks) === null) return;
      const loaded = await import(/* webpackChunkName: "loads" */ "../../app/pricing/enteredLoads");
      check = loaded.enteredLoads;
    },
    entered: (rates, settings) => {
      if (rates === null) return undefined;
      // Not to check in silence what has a capacity.
      if (check === null)
        throw new Error("Hanging loads are asked for before they can be checked.");
      return check(rates, settings);
    },
  };
}
