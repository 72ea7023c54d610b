/** A workbook file in memory, behind the port. */
import { err, ok, type Result } from "../../core/base/result";
import {
  listsDrawing,
  listsMark,
  listsOn,
  longLists,
  withLists,
  type ListPlaces,
} from "../../workbook/choiceLists";
import type { Drawing } from "../../workbook/drawing";
import { cancelled, sheetGone } from "../../workbook/faults";
import { carriedFrom, isTouched } from "../../workbook/fingerprint";
import { planWriting, type PlannedSheet, type StandingSheet } from "../../workbook/plan";
import { readSource, usedBlock } from "../../workbook/readSource";
import { sameSheetName } from "../../workbook/sheetNames";
import type { WorkbookSnapshot } from "../../workbook/snapshot";
import type {
  Workbook,
  WorkbookChange,
  WorkbookFault,
  WrittenSheet,
} from "../../workbook/workbook";
import { areNotesOurs } from "./notes";
import { damaged, partsBytes, type Parts } from "./parts";
import { placeSheet } from "./placeSheet";
import { activeSheetName, fileReader, type FileReader } from "./readWorkbook";
import { relationshipsOf } from "./relationships";
import { readSettings, writeSettings } from "./settingsPart";
import { calculateOnOpening, hideSheet } from "./sheetList";
import { DamagedFile } from "./xml";

/** The port on a file, and the file that has come of it. */
export type FileWorkbook = Workbook & {
  /** The .xlsx file as it is now, all that we did not write kept as it was. */
  readonly bytes: () => Uint8Array;
  /** All of it as plain data, for another host to show. */
  readonly snapshot: () => WorkbookSnapshot;
};

export type FileWorkbookOptions = {
  /** Called before each change of the file. What it throws is told as `host-refused`. */
  readonly beforeChange?: () => void;
};

/** @throws DamagedFile, here or when `snapshot` is first asked for; after that no more. */
export function fileWorkbook(
  parts: Parts,
  name: string,
  { beforeChange }: FileWorkbookOptions = {},
): FileWorkbook {
  let now = parts;
  let reader = fileReader(parts);
  let active = activeSheetName(reader.workbook);
  const watchers = new Set<(change: WorkbookChange) => void>();

  /** The file changes here and nowhere else, all at once. */
  const become = (next: Parts, changes: readonly WorkbookChange[]): void => {
    const nextReader = fileReader(next);
    now = next;
    reader = nextReader;
    for (const change of changes) for (const watcher of watchers) watcher(change);
  };
  const change = async <T>(
    act: (next: Map<string, Uint8Array>) => Promise<Result<T, WorkbookFault>>,
  ): Promise<Result<T, WorkbookFault>> => {
    if (reader.workbook.isStrict) return err(strictKind);
    try {
      return await act(beforeChange === undefined ? new Map(now) : new Watched(now, beforeChange));
    } catch (error) {
      if (error instanceof Refusal) return err({ code: "host-refused", message: error.message });
      if (error instanceof DamagedFile) return err(damagedWhere(error));
      throw error;
    }
  };

  const write: Workbook["write"] = (drawings, { onProgress, signal } = {}) =>
    change(async (next): Promise<Result<readonly WrittenSheet[], WorkbookFault>> => {
      const { isStructureProtected } = reader.workbook;
      const lists = listPlaces(drawings, reader);
      const all = lists.isMore ? [listsDrawing(lists.lists), ...drawings] : drawings;
      const plan = planWriting(all, standingSheets(now, reader, drawings), isStructureProtected);
      if (!plan.ok) return plan;
      const made = plan.value.find(isLists);
      const places = { lists: lists.lists, sheet: made?.name ?? lists.sheet };
      for (const [index, planned] of plan.value.entries()) {
        onProgress?.(index / plan.value.length);
        await otherWork();
        if (signal?.aborted === true) return err(cancelled);
        placeSheet(next, planned, places);
      }
      if (made?.was === "new") hideSheet(next, made.name, "veryHidden");
      calculateOnOpening(next);
      become(next, [
        { kind: "sheets" },
        ...plan.value.map((planned) => ({ kind: "cells", sheet: planned.name }) as const),
      ]);
      onProgress?.(1);
      return ok(
        plan.value
          .filter((planned) => !isLists(planned))
          .map(({ drawing, ...rest }): WrittenSheet => ({ ...rest, mark: drawing.mark })),
      );
    });

  return {
    host: "file",
    name: () => Promise.resolve(name),
    sheets: () => Promise.resolve(reader.summaries()),
    activeSheet: () => Promise.resolve(active),
    selection: () => Promise.resolve(null),
    read: (source) => Promise.resolve(readSource({ sheets: allSheets(reader) }, source)),
    watch: (onChange) => {
      watchers.add(onChange);
      return Promise.resolve(() => Promise.resolve(void watchers.delete(onChange)));
    },
    goTo: (place) => {
      const sheet = reader.workbook.sheets.find((each) => sameSheetName(each.name, place.sheet));
      if (sheet === undefined) return Promise.resolve(err(sheetGone(place.sheet)));
      active = sheet.name;
      return Promise.resolve(ok(null));
    },
    write,
    readSetting: (key) => {
      const settings = readSettings(now, reader.workbook.path);
      return Promise.resolve(Object.hasOwn(settings, key) ? (settings[key] ?? null) : null);
    },
    writeSetting: (key, text) =>
      change((next) => {
        const settings = readSettings(next, reader.workbook.path);
        writeSettings(next, reader.workbook.path, { ...settings, [key]: text });
        become(next, []);
        return Promise.resolve(ok(null));
      }),
    bytes: () => partsBytes(now),
    snapshot: () => reader.snapshot(name),
  };
}

const allSheets = (reader: FileReader): WorkbookSnapshot["sheets"] =>
  reader.workbook.sheets.map((_, position) => reader.sheetAt(position).sheet);

const isLists = ({ drawing }: PlannedSheet): boolean => drawing.mark?.kind === listsMark.kind;

/** The lists of drop-downs that there will be; `isMore` where the sheet of lists lacks some of them. */
function listPlaces(
  drawings: readonly Drawing[],
  reader: FileReader,
): ListPlaces & { readonly isMore: boolean } {
  const wanted = longLists(drawings.flatMap(({ choices }) => choices));
  const sheets = wanted.length === 0 ? [] : allSheets(reader);
  const standing = sheets.find(({ mark }) => mark?.kind === listsMark.kind);
  const known = standing === undefined ? [] : listsOn(usedBlock(standing));
  const lists = withLists(known, wanted);
  const sheet = standing?.name ?? null;
  return { sheet, lists, isMore: lists.length > known.length };
}

/** A note by somebody else counts as typing, and so does a pivot table. */
const standingSheets = (
  parts: Parts,
  reader: FileReader,
  drawings: readonly Drawing[],
): StandingSheet[] =>
  reader.workbook.sheets.map(({ path }, position) => {
    const { sheet } = reader.sheetAt(position);
    const linked = sheet.mark === null ? [] : relationshipsOf(parts, path);
    const isAddedTo = linked.some(
      ({ type, target }) =>
        type === "pivotTable" ||
        type === "threadedComment" ||
        (type === "comments" && !areNotesOurs(parts, target)),
    );
    return {
      ...sheet,
      isTouched: isTouched(sheet, carriedFrom(sheet.mark, drawings)) || isAddedTo,
    };
  });

class Refusal extends Error {}

/** Parts that ask before each change. */
class Watched extends Map<string, Uint8Array> {
  readonly #ask: () => void;

  constructor(parts: Parts, ask: () => void) {
    super();
    this.#ask = ask;
    for (const [path, part] of parts) super.set(path, part);
  }

  override set(path: string, part: Uint8Array): this {
    this.#asked();
    return super.set(path, part);
  }

  override delete(path: string): boolean {
    this.#asked();
    return super.delete(path);
  }

  #asked(): void {
    try {
      this.#ask();
    } catch (error) {
      throw new Refusal(error instanceof Error ? error.message : String(error));
    }
  }
}

/** Lets the page draw and answer between two sheets. */
const otherWork = (): Promise<void> => new Promise((done) => setTimeout(done));

/** Reading needs fewer parts than writing does. */
const damagedWhere = ({ message }: DamagedFile): WorkbookFault => ({
  code: "host-refused",
  message: damaged(message.replace(/\.$/, "")).message,
});

const strictKind: WorkbookFault = {
  code: "host-refused",
  message:
    "The workbook is saved as Strict Open XML, which Cribsheet reads but does not write. Save it as an ordinary Excel workbook (.xlsx).",
};
