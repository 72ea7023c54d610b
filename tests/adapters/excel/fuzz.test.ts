/** Any sequence of a person's doings and our writings, with refusals among them: nothing typed is lost. */
import fc from "fast-check";
import { expect, test } from "@jest/globals";
import type { Drawing } from "../../../src/workbook/drawing";
import type { Faults } from "../../fakehost/fakeHost";
import { drawing } from "../../workbook/drawings";
import { excelRig, type ExcelRig } from "./excelRig";
import { lookAt } from "./rigBook";

/** Sheets by their place among all, since their names change. */
type Doing =
  | { readonly kind: "type"; readonly sheet: number; readonly row: number; readonly column: number }
  | { readonly kind: "rename" | "copy"; readonly sheet: number }
  | { readonly kind: "move"; readonly sheet: number; readonly to: number }
  | { readonly kind: "insert"; readonly sheet: number; readonly row: number }
  | {
      readonly kind: "write";
      readonly sizes: readonly number[];
      readonly fault: Faults;
    };

const place = fc.nat(9);
const fault: fc.Arbitrary<Faults> = fc.oneof(
  { weight: 3, arbitrary: fc.constant({}) },
  fc.integer({ min: 1, max: 500 }).map((action) => ({ action })),
  fc.integer({ min: 1, max: 9 }).map((request) => ({ request })),
  fc.integer({ min: 1, max: 9 }).map((lostAnswer) => ({ lostAnswer })),
);
const doing: fc.Arbitrary<Doing> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant("type" as const),
      sheet: place,
      row: fc.nat(8),
      column: fc.nat(4),
    }),
  },
  fc.record({ kind: fc.constantFrom("rename" as const, "copy" as const), sheet: place }),
  fc.record({ kind: fc.constant("move" as const), sheet: place, to: place }),
  fc.record({ kind: fc.constant("insert" as const), sheet: place, row: fc.nat(6) }),
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant("write" as const),
      sizes: fc.array(fc.nat(6), { minLength: 1, maxLength: 3 }),
      fault,
    }),
  },
);

/** One sheet of lines with a table, one of reasons that points at it, one about all. */
function drawings(sizes: readonly number[], turn: number): readonly Drawing[] {
  const kinds = ["hardware", "reasons", "findings"];
  return sizes.map((size, index) => {
    const kind = kinds[index] ?? "more";
    const rows = Array.from({ length: size + 1 }, (_, row) => [`${kind} ${turn}.${row}`, row]);
    const total = index === 0 ? "=SUM(Lines[Count])" : `=hardware!B${size + 2}`;
    return drawing(kind, { kind, subject: "" }, [["Item", "Count"], ...rows, ["Total", total]], {
      tables:
        index === 0
          ? [{ name: "Lines", headingRow: 0, lastRow: size + 1, firstColumn: 0, lastColumn: 1 }]
          : [],
    });
  });
}

const allCells = (rig: ExcelRig): string =>
  JSON.stringify(lookAt(rig.book).map(({ cells }) => cells));

async function play(version: string, doings: readonly Doing[]): Promise<void> {
  const rig = await excelRig({ sheets: [{ name: "Schedule", cells: { A1: "Mark" } }] }, version);
  const { person } = rig.host;
  const typed: string[] = [];
  for (const [turn, each] of doings.entries()) {
    const visible = rig.book.sheets.filter(({ visibility }) => visibility === "Visible");
    const sheetAt = (index: number): string => visible[index % visible.length]?.name ?? "";
    switch (each.kind) {
      case "type": {
        const name = sheetAt(each.sheet);
        const cell = `${"CDEFG".charAt(each.column)}${each.row + 1}`;
        const isTaken = lookAt(rig.book).some((s) => s.name === name && cell in s.cells);
        if (isTaken) break;
        person.type(name, cell, `typed ${turn}`);
        typed.push(`typed ${turn}`);
        break;
      }
      case "rename":
        person.rename(sheetAt(each.sheet), `Renamed ${turn}`);
        break;
      case "copy":
        person.copySheet(sheetAt(each.sheet));
        break;
      case "move":
        person.move(sheetAt(each.sheet), each.to % rig.book.sheets.length);
        break;
      case "insert":
        person.insertRows(sheetAt(each.sheet), each.row, 1);
        break;
      case "write": {
        const before = new Set((await rig.workbook.sheets()).map(({ name }) => name));
        rig.host.failWith(each.fault);
        const wanted = drawings(each.sizes, turn);
        const outcome = await rig.workbook.write(wanted);
        rig.host.failWith({});
        const after = await rig.workbook.sheets();
        if (!outcome.ok) expect(new Set(after.map(({ name }) => name))).toEqual(before);
        else {
          for (const { mark } of outcome.value) {
            expect(after.filter((s) => s.mark?.kind === mark?.kind)).toHaveLength(1);
          }
          expect(allCells(rig)).toContain(`hardware ${turn}.${each.sizes[0] ?? 0}`);
        }
        break;
      }
    }
    const cells = allCells(rig);
    expect(typed.filter((text) => !cells.includes(text))).toEqual([]);
    expect(cells).not.toContain("#REF!");
    expect(rig.book.sheets.filter(({ name }) => name.startsWith("cribsheet-"))).toEqual([]);
    expect(rig.book.parts).toEqual([]);
  }
}

test.each(["1.9", "1.15"])(
  "with ExcelApi %s",
  async (version) => {
    await fc.assert(
      fc.asyncProperty(fc.array(doing, { minLength: 4, maxLength: 14 }), (doings) =>
        play(version, doings),
      ),
      { numRuns: 60 },
    );
  },
  300_000,
);
