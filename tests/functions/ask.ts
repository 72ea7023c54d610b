/** Asks worksheet functions as a cell does, in a workbook with nothing of its own but a kit book. */
import { openingCounter } from "../../src/app/openings/oneOpening";
import { defaultSettings } from "../../src/app/settings";
import type { KitBookRows } from "../../src/core/kitbook/rows";
import { starterItems } from "../../src/core/kitbook/starter/items";
import { starterKitBook } from "../../src/core/kitbook/starter/starterKitBook";
import { functionTable } from "../../src/functions/functionTable";
import type { FunctionInput } from "../../src/functions/worksheetFunction";

/** Answers with the value, or with `code: message` of the error. */
export function askerOf(kitBook: KitBookRows) {
  const counter = openingCounter(
    {
      readings: [],
      schedules: [],
      source: null,
      sources: [],
      scheduleSources: [],
      kitBook,
      hasOwnKitBook: false,
      kitBookEdition: 0,
      items: starterItems,
      hasOwnItems: false,
      hasItemsSheet: false,
      rates: null,
      findings: [],
    },
    defaultSettings,
  );
  return (name: string, ...inputs: readonly FunctionInput[]) => {
    const row = functionTable.find((each) => each.name === name);
    if (row === undefined) throw new Error(`No function ${name}`);
    const padded = row.arguments.map((_, index) => inputs[index] ?? null);
    const answer = row.run(padded, counter);
    return answer.ok ? answer.value : `${answer.error.code}: ${answer.error.message}`;
  };
}

export const ask = askerOf(starterKitBook);
