/**
 * The page that the contract of the port is run against in a real browser. A test talks to it in
 * plain data: a call by name, its arguments, its answer.
 */
import { cellsInView } from "../../../src/adapters/embedded/cellsInView";
import { openScreen } from "../../../src/adapters/embedded/screen";
import type { Drawing } from "../../../src/workbook/drawing";
import { gridRig } from "../../adapters/embedded/gridRig";
import { rigSnapshot, type RigSetup } from "../../workbook/rig";

const container = document.createElement("div");
container.className = "grid";
const sheet = new CSSStyleSheet();
sheet.replaceSync("body { margin: 0 } .grid { height: 100vh }");
document.adoptedStyleSheets.push(sheet);
document.body.append(container);

const start = rigSnapshot({ sheets: [{ name: "Sheet one" }] });
const screen = openScreen(container, { start, functions: [], dark: false });
let rig = gridRig(screen.engine, { sheets: [{ name: "Sheet one" }] });
let stopWatching: (() => Promise<void>) | null = null;

/** Asks the test and waits for its answer, as a listener in the same process would be called. */
function askTest(address: string, question: unknown): string {
  const request = new XMLHttpRequest();
  request.open("POST", address, false);
  request.send(JSON.stringify(question));
  return request.responseText;
}

/** What a test may call. */
const pageRig = {
  setUp: async (setup: RigSetup): Promise<void> => {
    await stopWatching?.();
    stopWatching = null;
    await rig.close();
    rig = gridRig(screen.engine, setup);
  },
  sheets: () => rig.workbook.sheets(),
  activeSheet: () => rig.workbook.activeSheet(),
  selection: () => rig.workbook.selection(),
  read: (source: Parameters<typeof rig.workbook.read>[0]) => rig.workbook.read(source),
  goTo: (place: Parameters<typeof rig.workbook.goTo>[0]) => rig.workbook.goTo(place),
  /** As the page itself does it, with what is in sight then. */
  show: async (row: number, column: number) => {
    const [sheet] = await screen.workbook.sheets();
    await screen.workbook.goTo({ sheet: sheet?.name ?? "", row, column });
    await drawn();
    return cellsInView(screen.engine);
  },
  readSetting: (key: string) => rig.workbook.readSetting(key),
  writeSetting: (key: string, text: string) => rig.workbook.writeSetting(key, text),
  write: async (drawings: readonly Drawing[], isAborted: boolean) => {
    const abort = new AbortController();
    if (isAborted) abort.abort();
    const outcome = await rig.workbook.write(drawings, {
      signal: abort.signal,
      onProgress: (done) => {
        if (askTest("/rig/progress", done) === "abort") abort.abort();
      },
    });
    await moment();
    return outcome;
  },
  watch: async (): Promise<void> => {
    stopWatching = await rig.workbook.watch((change) => {
      askTest("/rig/change", change);
    });
  },
  stopWatching: async (): Promise<void> => {
    await stopWatching?.();
  },
  type: async (...typed: Parameters<typeof rig.type>): Promise<void> => {
    await rig.type(...typed);
    await moment();
  },
  rename: (sheetName: string, name: string) => rig.rename(sheetName, name),
  protect: (sheetName: string) => rig.protect(sheetName),
  protectStructure: () => rig.protectStructure(),
  look: () => rig.look(),
  failAt: (call: number | null, onwards: boolean) => rig.failAt(call, onwards),
  calls: () => rig.calls(),
};

/** Watchers are told behind a timer; this is behind it. */
const moment = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));

/**
 * What is in view is known when the grid has drawn it, in a frame of its own, which on a busy
 * machine comes late. Two frames: whatever was asked for before the first is drawn by the second.
 */
const drawn = (): Promise<void> =>
  new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve())));

export type PageRig = typeof pageRig;

Object.assign(globalThis, { pageRig });
