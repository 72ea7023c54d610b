/** Our worksheet functions as Excel calls them, kept up with the workbook. */
import { inExcel } from "../../adapters/excel/inExcel";
import type { OpeningCounter } from "../../app/openings/oneOpening";
import type { CellValue } from "../../core/base/cell";
import { functionTable } from "../../functions/functionTable";
import type {
  FunctionAnswer,
  FunctionFault,
  FunctionInput,
  WorksheetFunction,
} from "../../functions/worksheetFunction";
import type { Workbook } from "../../workbook/workbook";
import { liveCounter, type LiveCounter } from "../liveCounter";

export type ExcelFunctions = {
  /** Answers by what `workbook` holds from now on, and asks Excel to calculate when that changes. */
  readonly connect: (workbook: Workbook) => Promise<void>;
};

/** Registers each function. One that is called before it is connected answers once it is. */
export function excelFunctions(): ExcelFunctions {
  let isAsked = false;
  let connected: (counter: LiveCounter["counter"]) => void = () => undefined;
  const counting = new Promise<LiveCounter["counter"]>((resolve) => (connected = resolve));
  // Absent where Office.js came without the part for functions: the pane works all the same.
  if ("CustomFunctions" in globalThis) {
    for (const row of functionTable) {
      CustomFunctions.associate(row.name, async (...given: readonly unknown[]) => {
        isAsked = true;
        const counter = await counting;
        return answerTo(row, given, counter());
      });
    }
  }
  return {
    connect: async (workbook) => {
      await answering(workbook);
      const live = await liveCounter(workbook, () => {
        if (isAsked) void calculateAgain();
      });
      connected(live.counter);
    },
  };
}

/** Excel may be busy when the add-in starts; without an answer cells would show #BUSY! for good. */
async function answering(workbook: Workbook): Promise<void> {
  for (let tries = 1; ; tries++) {
    try {
      await workbook.sheets();
      return;
    } catch (error) {
      if (tries === mostTries) throw error;
      await new Promise((resolve) => setTimeout(resolve, betweenTries));
    }
  }
}

const mostTries = 20;
/** Milliseconds. */
const betweenTries = 3000;

/** Marks every formula as to be calculated: Excel does not know what ours hang on. */
const calculateAgain = (): Promise<unknown> =>
  inExcel(async (context) => {
    context.workbook.application.calculate("Full");
    await context.sync();
  });

/** Excel takes a value, or rows; an error has to be thrown to carry a message. */
export function answerTo(
  row: WorksheetFunction,
  given: readonly unknown[],
  counter: OpeningCounter | null,
): FunctionAnswer {
  if (counter === null) throwFault(notRead);
  // Behind the arguments Excel passes an object about the call.
  const inputs = row.arguments.map((_, index) => inputOf(given[index]));
  const answer = row.run(inputs, counter);
  return answer.ok ? answer.value : throwFault(answer.error);
}

const notRead: FunctionFault = {
  code: "na",
  message: "The workbook could not be read yet. Change any cell of the kit book to try again.",
};

/** An argument left out comes as null, a blank cell as the empty text or null. */
function inputOf(value: unknown): FunctionInput {
  if (!Array.isArray(value)) return cellOf(value);
  return (value as readonly unknown[]).map((line) =>
    Array.isArray(line) ? (line as readonly unknown[]).map(cellOf) : [cellOf(line)],
  );
}

function cellOf(value: unknown): CellValue {
  if (typeof value === "string") return value === "" ? null : value;
  return typeof value === "number" || typeof value === "boolean" ? value : null;
}

/** The codes as Excel writes them. Their names came a version later than errors with a message. */
const errorCodes: Readonly<Record<FunctionFault["code"], unknown>> = {
  value: "#VALUE!",
  na: "#N/A",
};

/** Excel shows the code in the cell and the message beside it. */
function throwFault({ code, message }: FunctionFault): never {
  // eslint-disable-next-line @typescript-eslint/only-throw-error -- the class that Excel asks for
  throw new CustomFunctions.Error(errorCodes[code] as CustomFunctions.ErrorCode, message);
}
