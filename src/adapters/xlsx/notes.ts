/** Notes on cells: their texts in one part, their little boxes in another of an older format. */
import { columnName } from "../../core/base/cell";
import { readCell } from "./cellRange";
import { partText, type Parts } from "./parts";
import { xmlStart } from "./relationships";
import { textReader } from "./sharedStrings";
import { childNamed, escapeXml, parseXml, scanXml } from "./xml";

export type CellNote = { readonly row: number; readonly column: number; readonly text: string };

/** All notes of a comments part. */
export function readNotes(parts: Parts, path: string): readonly CellNote[] {
  const source = partText(parts, path);
  if (source === null) return [];
  const notes: CellNote[] = [];
  const reader = textReader();
  let at = "";
  scanXml(source, {
    open: (name, attributes) => {
      if (name === "comment") {
        at = attributes["ref"] ?? "";
        reader.start();
      } else reader.open(name);
    },
    close: (name) => {
      if (name === "comment") notes.push({ ...readCell(at), text: reader.text() });
      else reader.close(name);
    },
    text: reader.add,
  });
  return notes;
}

/** Who our notes are by. */
export const noteAuthor = "Cribsheet";

/** Whether no note of a comments part is by a person. Some programs save notes without their author. */
export function areNotesOurs(parts: Parts, path: string): boolean {
  const source = partText(parts, path);
  if (source === null) return true;
  const authors = childNamed(parseXml(source), "authors")?.children ?? [];
  return authors.every(({ text }) => [noteAuthor, ""].includes(text.trim()));
}

/** The comments part. */
export function notesXml(notes: readonly CellNote[]): string {
  const rows = notes.map(
    ({ row, column, text }) =>
      `<comment ref="${columnName(column)}${row + 1}" authorId="0"><text><r><rPr><sz val="9"/><rFont val="Tahoma"/><family val="2"/></rPr><t xml:space="preserve">${escapeXml(text)}</t></r></text></comment>`,
  );
  return `${xmlStart}<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author>${noteAuthor}</author></authors><commentList>${rows.join("")}</commentList></comments>`;
}

/**
 * The part with the boxes, hidden until the pointer rests on the cell. `group` is the part's own
 * number in the file: each part counts its boxes from another thousand on.
 */
export function noteBoxesXml(notes: readonly CellNote[], group: number): string {
  const boxes = notes.map(({ row, column, text }, index) => {
    const lines = text
      .split("\n")
      .reduce((sum, line) => sum + Math.ceil(line.length / 32) + 0.2, 1);
    const height = Math.max(4, Math.ceil(lines));
    const anchor = [column + 1, 15, Math.max(0, row - 1), 10, column + 4, 15, row + height, 4];
    return `<v:shape id="_x0000_s${1024 * group + 1 + index}" type="#_x0000_t202" style="position:absolute;margin-left:60pt;margin-top:2pt;width:144pt;height:${height * 15}pt;z-index:${index + 1};visibility:hidden" fillcolor="#ffffe1" o:insetmode="auto"><v:fill color2="#ffffe1"/><v:shadow on="t" color="black" obscured="t"/><v:path o:connecttype="none"/><v:textbox style="mso-direction-alt:auto"><div style="text-align:left"></div></v:textbox><x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>${anchor.join(", ")}</x:Anchor><x:AutoFill>False</x:AutoFill><x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`;
  });
  return `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><o:shapelayout v:ext="edit"><o:idmap v:ext="edit" data="${group}"/></o:shapelayout><v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>${boxes.join("")}</xml>`;
}
