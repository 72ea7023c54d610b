/**
 * The embedded page: a spreadsheet with the pane beside it, in any browser, with nothing leaving
 * the machine. It is also what the Excel page becomes where there is no Excel.
 */
import type { GridScreen } from "../../adapters/embedded/screen";
import type { WorkbookSnapshot } from "../../workbook/snapshot";
import type { Workbook } from "../../workbook/workbook";
import { emptyWorkbook, firstWorkbook } from "./firstWorkbook";
import { gridFunctions } from "./gridFunctions";
import { keepWhileChanging, openKeptWorkbook, type Keeping } from "./keepWork";
import { moveByKey } from "./moveByKey";
import { buildPage, type PageParts } from "./pageParts";
import { mountEmbeddedPane } from "./pane";
import type { SaveFile } from "../../pane/state/paneContext";
import type { FileKind, LoadFiles } from "../../workbook/files";
import { usedBlock } from "../../workbook/readSource";
import "./embedded.css";

/** Builds the page in `body`, which is empty, and opens what was kept or else the first workbook. */
export async function openEmbedded(body: HTMLElement, files: LoadFiles): Promise<GridScreen> {
  const page = buildPage(body);
  page.say("Opening…");
  const [{ openScreen }, kept] = await Promise.all([
    import(/* webpackChunkName: "screen" */ "../../adapters/embedded/screen"),
    openKeptWorkbook(page.warn),
  ]);
  const before = await kept.read();
  const start = before ?? firstWorkbook();
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const { functions, connect } = gridFunctions();
  const screen = openScreen(page.grid, {
    start,
    functions,
    dark: dark.matches,
    onReason: page.sayReason,
  });
  dark.addEventListener("change", () => screen.setDark(dark.matches));
  page.setName(start.name);
  page.say(before === null ? "" : "Your work from last time.");
  const keeping = keepWhileChanging(screen.workbook, kept, before !== null, page.say);
  await connect(screen.workbook, screen.recalculate);
  const saveFile: SaveFile = (snapshot, kind) => saveAsFile(snapshot, files, kind);
  mountEmbeddedPane(page.pane, { workbook: showingWhereItGoes(page, screen), saveFile }, dark);
  connectFiles(page, screen, keeping, files);
  moveByKey(body, page, screen.focus);
  finishTypingOnLeave(body, screen);
  return screen;
}

/**
 * The workbook as the pane has it: whoever goes to a cell has the keyboard there, to type over it at
 * once. On a narrow page the spreadsheet is out of sight behind the pane, and comes to the front.
 */
function showingWhereItGoes(
  page: PageParts,
  { workbook, focus, finishTyping }: GridScreen,
): Workbook {
  return {
    ...workbook,
    goTo: async (place) => {
      finishTyping();
      const isHidden = page.isOnlyPart("pane");
      if (isHidden) {
        page.showPart("grid");
        // The grid scrolls by the size that it is drawn with.
        await nextFrame();
      }
      const gone = await workbook.goTo(place);
      if (gone.ok) focus();
      else if (isHidden) page.showPart("pane");
      return gone;
    },
  };
}

const nextFrame = (): Promise<void> =>
  new Promise((drawn) => {
    requestAnimationFrame(() => requestAnimationFrame(() => drawn()));
  });

/** A cell that is half typed counts once the person turns to the pane or the bar. */
function finishTypingOnLeave(body: HTMLElement, { finishTyping }: GridScreen): void {
  body.addEventListener("focusin", ({ target }) => {
    if (target instanceof Element && target.closest(".page-pane, .page-bar")) finishTyping();
  });
}

/** Open, save, start over, and a file dropped on the page. */
function connectFiles(
  page: PageParts,
  { workbook, finishTyping }: GridScreen,
  keeping: Keeping,
  files: LoadFiles,
): void {
  /** Whether the person knows that what this page cannot hold will not be in the file. */
  let knowsWhatIsLost = false;
  const show = (snapshot: WorkbookSnapshot): void => {
    knowsWhatIsLost = false;
    workbook.open(snapshot);
    page.setName(snapshot.name);
  };
  const mayReplace = (): Promise<boolean> =>
    keeping.isChanged()
      ? page.ask({
          title: "Open another file?",
          text: "What is open now has changes that are in no file. They are gone once another file is open.",
          yes: "Open",
          no: "Keep what is open",
        })
      : Promise.resolve(true);
  const openFile = async (file: File): Promise<void> => {
    // A file that is dropped takes the keyboard from no cell.
    finishTyping();
    const { read: readFile } = await files();
    const read = readFile(file.name, new Uint8Array(await file.arrayBuffer()));
    if (!read.ok) {
      page.warn(`${file.name} was not opened. ${read.error}`);
      return;
    }
    if (!(await mayReplace())) return;
    show(read.value);
    keeping.savedToFile();
    page.say(`Opened ${file.name}.`);
    if (read.value.leftOut.length > 0) {
      page.warn(
        `${file.name} has what this page cannot show: ${read.value.leftOut.join(", ")}. A file saved from here is without it; the file you opened stays as it is.`,
      );
    }
  };
  const saveFile = async (): Promise<void> => {
    finishTyping();
    await workbook.calculated();
    // What is typed while the file is made is not in it.
    const changes = keeping.changes();
    const snapshot = workbook.snapshot();
    if (snapshot.leftOut.length > 0 && !knowsWhatIsLost) {
      const sure = await page.ask({
        title: "Save without some of it?",
        text: `The file that you opened has what this page cannot hold: ${snapshot.leftOut.join(", ")}. The file that you save is without it, so keep the one that you opened.`,
        yes: "Save without it",
        no: "Don’t save",
      });
      if (!sure) return;
      knowsWhatIsLost = true;
    }
    await saveAsFile(snapshot, files);
    keeping.savedToFile(changes);
    page.say(`Saved ${fileName(snapshot.name, "xlsx")}.`);
  };
  const startOver = async (): Promise<void> => {
    const way = await page.choose({
      title: "Start over?",
      text: "What is open now is cleared from this page and from this browser. Save it first if you need it.",
      ways: [
        ["empty", "Start empty"],
        ["demo", "Start with the demo"],
      ],
      no: "Keep my work",
    });
    if (way === null) return;
    show(way === "demo" ? firstWorkbook() : emptyWorkbook());
    // The demo is what comes anyway; an empty workbook has to be there after a reload.
    if (way === "demo") await keeping.forget();
    else keeping.savedToFile();
    page.say("Started over.");
  };
  const told = (act: () => Promise<void>): void => {
    act().catch((fault: unknown) => {
      page.warn(`That did not work, and nothing was changed. ${String(fault)}`);
    });
  };
  page.open.addEventListener("click", () => page.file.click());
  page.file.addEventListener("change", () => {
    const file = page.file.files?.[0];
    page.file.value = "";
    if (file) told(() => openFile(file));
  });
  page.save.addEventListener("click", () => told(saveFile));
  page.startOver.addEventListener("click", () => told(startOver));
  watchDrops((file) => told(() => openFile(file)));
}

/**
 * Listens before the grid does, which has its own use for what is dropped on it. A part of the page
 * that takes files itself, and says so, is left alone.
 */
function watchDrops(onFile: (file: File) => void): void {
  const hasFile = ({ dataTransfer, target }: DragEvent): boolean =>
    dataTransfer?.types.includes("Files") === true &&
    !(target instanceof Element && target.closest("[data-takes-files]") !== null);
  const mark = (over: boolean): void => {
    document.body.toggleAttribute("data-drop", over);
  };
  window.addEventListener(
    "dragover",
    (event) => {
      mark(hasFile(event));
      if (!hasFile(event)) return;
      event.preventDefault();
      event.stopPropagation();
    },
    true,
  );
  window.addEventListener(
    "dragleave",
    (event) => {
      if (event.relatedTarget === null) mark(false);
    },
    true,
  );
  window.addEventListener(
    "drop",
    (event) => {
      mark(false);
      const file = event.dataTransfer?.files[0];
      if (!hasFile(event) || file === undefined) return;
      event.preventDefault();
      event.stopPropagation();
      onFile(file);
    },
    true,
  );
}

async function saveAsFile(
  snapshot: WorkbookSnapshot,
  files: LoadFiles,
  kind: FileKind = "xlsx",
): Promise<void> {
  const { write, writeText } = await files();
  const [first] = snapshot.sheets;
  const bytes =
    kind === "xlsx" || first === undefined ? write(snapshot) : writeText(usedBlock(first).rows);
  download(bytes, fileTypes[kind], fileName(snapshot.name, kind));
}

const fileTypes: Readonly<Record<FileKind, string>> = {
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  csv: "text/csv",
};

function download(bytes: Uint8Array, type: string, name: string): void {
  const address = URL.createObjectURL(new Blob([bytes.slice()], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** `Job A.csv` and `Job A.xlsx` both save as `Job A.xlsx`. */
const fileName = (name: string, kind: FileKind): string =>
  `${name.replace(/\.(xlsx|csv)$/i, "") || "Cribsheet"}.${kind}`;
