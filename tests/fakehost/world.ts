/** The fake workbook together with those who listen to it. */
import { areaAddress, type Area } from "./areas";
import type { FakeBook, FakeSheet } from "./book";

/** The numbers by which the wire tells events apart. */
export const eventKinds = {
  changed: 10,
  activated: 11,
  added: 13,
  selectionChanged: 14,
  deleted: 15,
  renamed: 25,
} as const;
export type EventKind = keyof typeof eventKinds;

export type HostEvent = {
  readonly kind: EventKind;
  readonly sheetId: string;
  readonly address: string;
  readonly source: "Local";
};

export type World = {
  readonly book: FakeBook;
  /** What add-ins asked to be told of. */
  readonly listening: Set<EventKind>;
  /** What happened and was not yet told. */
  readonly events: HostEvent[];
  /** How often the whole workbook was calculated on request. */
  calculations: number;
};

export const newWorld = (book: FakeBook): World => ({
  book,
  listening: new Set(),
  events: [],
  calculations: 0,
});

/** Notes an event for those who listen. */
export function tell(world: World, kind: EventKind, sheet: FakeSheet, area?: Area): void {
  if (!world.listening.has(kind)) return;
  const address = area === undefined ? "" : areaAddress(area);
  world.events.push({ kind, sheetId: sheet.id, address, source: "Local" });
}
