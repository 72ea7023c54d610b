/** Comments and notes of the fake host. */
import { keyColumn, keyRow, parseArea } from "./areas";
import type { FakeSheet } from "./book";
import { denied, hostObject, textOf, type HostObject } from "./hostObject";
import { cellName } from "../../src/core/base/cell";

const at = (key: number): string => cellName({ row: keyRow(key), column: keyColumn(key) });

/** The key of the cell that an address such as `Sheet1!B3` or `B3` names. */
function keyOf(address: unknown): number {
  const { row, column } = parseArea(textOf(address).replace(/^.*!/, ""));
  return row * 16_384 + column;
}

export function commentsObject(sheet: FakeSheet): HostObject {
  return hostObject({
    kind: "comments",
    items: () =>
      Array.from(sheet.comments, ([key, text]) =>
        hostObject({
          kind: "comment",
          id: at(key),
          get: { id: () => at(key), content: () => text, text: () => text },
        }),
      ),
    call: {
      getCount: () => sheet.comments.size,
      add: (address, text) => {
        sheet.comments.set(keyOf(address), textOf(text));
        return hostObject({ kind: "comment", id: textOf(address) });
      },
    },
  });
}

export function notesObject(sheet: FakeSheet): HostObject {
  const note = (key: number): HostObject =>
    hostObject({
      kind: "note",
      id: at(key),
      get: { content: () => sheet.notes.get(key) ?? "", visible: () => false },
      call: { delete: () => void sheet.notes.delete(key) },
    });
  return hostObject({
    kind: "notes",
    items: () => Array.from(sheet.notes.keys(), note),
    call: {
      getCount: () => sheet.notes.size,
      add: (address, text) => {
        if (sheet.isProtected) denied();
        sheet.notes.set(keyOf(address), textOf(text));
        return note(keyOf(address));
      },
    },
  });
}
