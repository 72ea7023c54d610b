/**
 * What the test browser runs in place of Office.js, behind Microsoft's own object model: a host that
 * answers from a fake workbook, and the rest of `Office` as far as the pane asks for it. A test talks
 * to it in plain data.
 */
import { isStampName, readStamp } from "../../../src/workbook/sheetStamp";
import { bookOf, lookAt } from "../../adapters/excel/rigBook";
import { parseArea } from "../../fakehost/areas";
import { findSheet, shownAt } from "../../fakehost/book";
import { excelApiUpTo, readyModel, type OfficeModel } from "../../fakehost/excelModel";
import { fakeHost } from "../../fakehost/fakeHost";
import type { RigSetup, SeenSheet } from "../../workbook/rig";

/** What the script is given before it: the workbook, and the API that its Excel has. */
export type OfficeSetup = { readonly workbook: RigSetup; readonly version: string };

type FunctionCall = (...given: readonly unknown[]) => unknown;
type Command = (event: { readonly completed: () => void }) => void;

const page = globalThis as unknown as OfficeModel & { readonly officeSetup: OfficeSetup };
const { workbook, version } = page.officeSetup;
const isSetSupported = excelApiUpTo(version);
const functions = new Map<string, FunctionCall>();
const commands = new Map<string, Command>();
const asked: string[] = [];

/** Excel's own class of errors that carry a message. */
class FunctionError {
  constructor(
    readonly code: string,
    readonly message = "",
  ) {}
}

const noted = (name: string) => (): Promise<void> => {
  asked.push(name);
  return Promise.resolve();
};

// The object model's file puts an `Office` of its own there, which looks for a host around the page.
Object.assign(globalThis, {
  Office: {
    HostType: { Excel: "Excel" },
    StartupBehavior: { load: "Load" },
    onReady: () => Promise.resolve({ host: "Excel", platform: "OfficeOnline" }),
    context: { requirements: { isSetSupported } },
    addin: {
      onVisibilityModeChanged: noted("onVisibilityModeChanged"),
      setStartupBehavior: noted("setStartupBehavior"),
      showAsTaskpane: noted("showAsTaskpane"),
    },
    actions: { associate: (id: string, act: Command) => void commands.set(id, act) },
  },
  CustomFunctions: {
    associate: (id: string, act: FunctionCall) => void functions.set(id, act),
    Error: FunctionError,
  },
});

readyModel(page);
const book = bookOf(workbook);
const host = fakeHost(book, page.OfficeExtension);

const pageExcel = {
  type: host.person.type,
  select: host.person.select,
  look: (): readonly SeenSheet[] => lookAt(book),
  /** What lies over the cells of a sheet: each image's bytes in base64, each chart's cells. */
  floating: (
    name: string,
  ): {
    readonly pictures: readonly { readonly image: string; readonly looks: object }[];
    readonly charts: readonly (readonly string[])[];
  } => {
    const sheet = findSheet(book, name);
    return {
      pictures: (sheet?.shapes ?? []).map(({ image, looks }) => ({ image: image ?? "", looks })),
      charts: (sheet?.charts ?? []).map(({ series }) => series.map(({ values }) => values)),
    };
  },
  /** What a cell shows, its formula calculated. */
  shown: (name: string, cell: string): string | number | boolean | null => {
    const sheet = findSheet(book, name);
    if (sheet === undefined) return null;
    const { row, column } = parseArea(cell);
    const value = shownAt(book, sheet, row, column);
    return typeof value === "object" ? value.error : value;
  },
  /** The kind of each sheet that is marked as ours, by its name. */
  marks: (): Readonly<Record<string, string>> =>
    Object.fromEntries(
      book.names.flatMap(({ name, formula }): [string, string][] => {
        const stamp = isStampName(name) ? readStamp(formula) : null;
        return stamp === null ? [] : [[stamp.sheet, stamp.mark.kind]];
      }),
    ),
  selection: () => ({ sheet: book.active.name, area: book.selection[0] ?? null }),
  protect: (name: string | null): void => {
    if (name === null) book.structureProtected = true;
    const sheet = name === null ? undefined : findSheet(book, name);
    if (sheet !== undefined) sheet.isProtected = true;
  },
  failWith: host.failWith,
  requests: () => host.requests.length,
  /** What Office was asked for besides the workbook. */
  asked: (): readonly string[] => asked,
  /** Presses a button of the ribbon and waits until Excel is told that it is done. */
  press: (id: string): Promise<void> =>
    new Promise((completed) => commands.get(id)?.({ completed })),
  /** What a cell with this function shows, and the message beside an error. */
  call: async (name: string, ...given: readonly unknown[]): Promise<unknown> => {
    try {
      return await functions.get(name)?.(...given);
    } catch (fault) {
      if (fault instanceof FunctionError) return { code: fault.code, message: fault.message };
      throw fault;
    }
  },
};

export type PageExcel = typeof pageExcel;

Object.assign(globalThis, { pageExcel });
