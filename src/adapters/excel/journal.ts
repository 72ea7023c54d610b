/**
 * The journal: what is being written, kept inside the workbook until it is done. When Excel stops in
 * the middle, whoever opens the workbook next finds it and finishes or undoes what it tells.
 *
 * `building`: sheets are being prepared under names of their own; undone by deleting those.
 * `swapping`: the old sheets are copied aside and the new contents go in; undone from the copies.
 * `done`: the new sheets stand; the copies are yet to be kept or deleted.
 */
import type { CarriedCell, SheetMark } from "../../workbook/drawing";
import type { ChartPlan } from "./charts";
import type { Dress } from "./dress";
import type { PlacedPicture } from "./placedPicture";
import type { StandingTable } from "./tables";

export type JournalSheet = {
  readonly was: "new" | "replaced";
  /** The name it ends under. */
  readonly name: string;
  readonly mark: SheetMark | null;
  /** The name of the sheet on which it is prepared. */
  readonly aside: string;
  /** That sheet's id, by which it is known once it has its name; `null` until the swap begins. */
  readonly asideId: string | null;
  /** The name of the copy of what stood there; `null` for a new sheet. */
  readonly old: string | null;
  /** The hidden name that marks it, and what that held before; `null` where there was none. */
  readonly stamp: string | null;
  readonly stampBefore: string | null;
  /** The fingerprint of what we wrote last time; `null` for a new sheet. */
  readonly writtenBefore: string | null;
  /** The fingerprint of what we write; `null` until the swap begins. */
  readonly written: string | null;
  /** Cells of the old sheet whose content the new one has. */
  readonly carried: readonly CarriedCell[];
  /** Tables that stood on it. */
  readonly tablesBefore: readonly StandingTable[];
  /** The texts of the notes that we write on it; any other note is a person's. */
  readonly notes: readonly string[];
  readonly dress: Dress;
  /** Those that are on it already, unseen; none until they are added. */
  readonly pictures: readonly PlacedPicture[];
  readonly charts: readonly ChartPlan[];
};

export type Journal = {
  readonly version: 1;
  /** Who writes: one name for each opening of the pane. */
  readonly writer: string;
  /** When the phase was entered, in milliseconds since 1970. */
  readonly at: number;
  readonly phase: "building" | "swapping" | "done";
  readonly sheets: readonly JournalSheet[];
};

export const journalNamespace = "urn:cribsheet:journal";

/** Another writer that was heard of this long ago (milliseconds) has stopped. */
export const silence = 60_000;

export const journalXml = (journal: Journal): string =>
  `<journal xmlns="${journalNamespace}">${encodeURIComponent(JSON.stringify(journal))}</journal>`;

/** Reads what `journalXml` made. */
export function readJournal(xml: string): Journal {
  const text = /<(?:\w+:)?journal[^>]*>([^<]*)</.exec(xml)?.[1] ?? "";
  return JSON.parse(decodeURIComponent(text)) as Journal;
}

/** The part that holds the journal, or a null object. */
export const journalPart = (workbook: Excel.Workbook): Excel.CustomXmlPart =>
  workbook.customXmlParts.getByNamespace(journalNamespace).getOnlyItemOrNullObject();

/** Names for sheets that are not to be seen; `writer` keeps them apart from a person's. */
export const asideName = (writer: string, kind: "new" | "old", count: number): string =>
  `cribsheet-${writer}-${kind}-${count}`;

export const isAsideName = (name: string): boolean =>
  /^cribsheet-[0-9a-f]{8}-(?:new|old)-\d+$/.test(name);

/** Deletes a sheet, one that nobody sees too: Excel deletes none that is very hidden. */
export function deleteSheet(worksheet: Excel.Worksheet): void {
  worksheet.visibility = "Hidden";
  worksheet.delete();
}

/**
 * A hidden name in the scope of a sheet that is being copied. The copy has it too, so that a copy
 * is known as ours even when Excel stopped before it got its name aside.
 */
export const copyMark = "_cribsheet_copy";
