/**
 * Opens workbooks in LibreOffice, lets it work out every formula afresh, and compares with the
 * results that we wrote beside the formulas. The workbook that LibreOffice saves must still know our
 * sheets as ours, with nothing typed into them.
 *
 *     npx tsx .ci/libreoffice-check.ts FILE.xlsx …
 *
 * Exit status 0: all agree, or LibreOffice is not there (said plainly). 1: a result differs.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { openFile } from "../src/adapters/xlsx/openFile";
import { snapshotBytes } from "../src/adapters/xlsx/snapshotBytes";
import { cellName, cellText, placeName, type CellValue } from "../src/core/base/cell";
import { blankSheet, workbookOf } from "../src/workbook/blankSheet";
import { isTouched } from "../src/workbook/fingerprint";
import { sameMark } from "../src/workbook/sheetStamp";
import type { WorkbookSnapshot } from "../src/workbook/snapshot";

const office = ["soffice", "libreoffice"].find(
  (name) => spawnSync(name, ["--version"], { stdio: "ignore" }).status === 0,
);
const files = process.argv.slice(2);

function check(program: string, folder: string): boolean {
  const recalculate = recalculator(program, folder);
  // A wrong result planted on purpose must come back right: else nothing is worked out at all.
  const planted = join(folder, "planted.xlsx");
  writeFileSync(planted, snapshotBytes(withWrongResult));
  if (differences(read(planted), read(recalculate(planted))).length !== 1) {
    console.error("LibreOffice did not work the formulas out afresh: the check proves nothing.");
    return false;
  }
  let isGood = true;
  for (const file of files) {
    const ours = read(file);
    const theirs = read(recalculate(file));
    const found = [...differences(ours, theirs), ...strangers(ours, theirs)];
    for (const difference of found) console.error(`${file}: ${difference}`);
    const formulas = formulasOf(ours).length;
    console.log(`${file}: ${formulas} formulas, ${found.length} differences in LibreOffice.`);
    if (formulas === 0) console.error(`${file}: there is no formula to check.`);
    isGood &&= found.length === 0 && formulas > 0;
  }
  return isGood;
}

/** Saves a workbook anew from a profile of its own, in which every load is a recalculation. */
function recalculator(program: string, folder: string): (file: string) => string {
  const profile = join(folder, "profile");
  mkdirSync(join(profile, "user"), { recursive: true });
  writeFileSync(join(profile, "user", "registrymodifications.xcu"), alwaysRecalculate);
  let count = 0;
  return (file) => {
    count += 1;
    const into = join(folder, String(count));
    const { status, stderr } = spawnSync(
      program,
      [
        "--headless",
        `-env:UserInstallation=${pathToFileURL(profile).href}`,
        "--convert-to",
        "xlsx:Calc MS Excel 2007 XML",
        "--outdir",
        into,
        file,
      ],
      { encoding: "utf8", timeout: 300_000 },
    );
    if (status !== 0) throw new Error(`LibreOffice could not open ${file}: ${stderr}`);
    return join(into, basename(file).replace(/\.\w+$/, ".xlsx"));
  };
}

function read(file: string): WorkbookSnapshot {
  const opened = openFile(readFileSync(file), basename(file));
  if (!opened.ok) throw new Error(`${file}: ${opened.error.message}`);
  return opened.value.snapshot();
}

type Worked = { readonly place: string; readonly formula: string; readonly value: CellValue };

function formulasOf({ sheets }: WorkbookSnapshot): Worked[] {
  return sheets.flatMap(({ name, rows }) =>
    rows.flatMap((cells, row) =>
      cells.flatMap((cell, column): Worked[] =>
        cell?.formula === undefined
          ? []
          : [
              {
                place: placeName({ sheet: name, row, column }),
                formula: cell.formula,
                value: cell.value,
              },
            ],
      ),
    ),
  );
}

/** Each formula of ours whose result LibreOffice sees otherwise, in words. */
function differences(ours: WorkbookSnapshot, theirs: WorkbookSnapshot): string[] {
  const values = new Map<string, CellValue>();
  for (const { name, rows } of theirs.sheets) {
    rows.forEach((cells, row) =>
      cells.forEach((cell, column) =>
        values.set(`${name}!${cellName({ row, column })}`, cell?.value ?? null),
      ),
    );
  }
  const plainPlace = (place: string): string =>
    place.replace(/^'(.*)'!/, "$1!").replaceAll("''", "'");
  return formulasOf(ours)
    .filter(({ place, value }) => !isSame(value, values.get(plainPlace(place)) ?? null))
    .map(({ place, formula, value }) => {
      const theirValue = values.get(plainPlace(place)) ?? null;
      return `${place} ${formula} is ${cellText(value)} here and ${cellText(theirValue)} there.`;
    });
}

/** Each sheet of ours that is not known any more in the workbook as LibreOffice saved it. */
const strangers = (ours: WorkbookSnapshot, theirs: WorkbookSnapshot): string[] =>
  ours.sheets.flatMap(({ name, mark }) => {
    if (mark === null) return [];
    const saved = theirs.sheets.find((sheet) => sheet.name === name);
    const isKnown =
      saved !== undefined && saved.mark !== null && sameMark(saved.mark, mark) && !isTouched(saved);
    return isKnown ? [] : [`The sheet “${name}” is not known as ours once LibreOffice saved it.`];
  });

/** Numbers agree to twelve digits; a blank text and a blank cell are one. */
function isSame(one: CellValue, other: CellValue): boolean {
  const plain = (value: CellValue): CellValue =>
    value !== null && typeof value === "object" && value.kind === "date" ? value.serial : value;
  const [left, right] = [plain(one), plain(other)];
  if (typeof left === "number" && typeof right === "number") {
    return Math.abs(left - right) <= 1e-12 * Math.max(1, Math.abs(left), Math.abs(right));
  }
  return cellText(left) === cellText(right);
}

const alwaysRecalculate = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry"><item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item></oor:items>`;

const withWrongResult = workbookOf("Planted", [
  {
    ...blankSheet("Planted"),
    rows: [
      [
        { value: 41, formula: "=6*7" },
        { value: 42, formula: "=6*7" },
      ],
    ],
  },
]);

if (files.length === 0) {
  console.error("Which workbooks? npx tsx .ci/libreoffice-check.ts FILE.xlsx …");
  process.exitCode = 2;
} else if (office === undefined) {
  console.log("LibreOffice is not installed: the formulas were NOT worked out a second time.");
  console.log("On Debian: apt-get install --no-install-recommends libreoffice-calc");
} else {
  const folder = mkdtempSync(join(tmpdir(), "libreoffice-check-"));
  try {
    process.exitCode = check(office, folder) ? 0 : 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
