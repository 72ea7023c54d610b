import { describe, expect, test } from "@jest/globals";
import { strFromU8, unzipSync } from "fflate";
import { fileWorkbook } from "../../../src/adapters/xlsx/fileWorkbook";
import { openFile } from "../../../src/adapters/xlsx/openFile";
import { snapshotParts } from "../../../src/adapters/xlsx/snapshotBytes";
import { demoDrawings } from "../../../src/app/demo/demoDrawings";
import { priceWorkbook } from "../../../src/app/pricing/priceWorkbook";
import { quoteJob } from "../../../src/app/pricing/quoteJob";
import { defaultSettings } from "../../../src/app/settings";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import { cellText } from "../../../src/core/base/cell";
import { blankRow, row, text } from "../../../src/sheets/cells";
import type { Drawing } from "../../../src/workbook/drawing";
import { drawnWorkbook } from "../../../src/workbook/drawnWorkbook";

const today = 46_200;

const typedSheet = (name: string, ...rows: readonly (readonly string[])[]): Drawing => ({
  name,
  mark: null,
  columnWidths: [],
  rows: [blankRow, ...rows.map((words) => row(...words.map((word) => text(word))))],
  frozenRows: 0,
  frozenColumns: 0,
  tables: [],
  choices: [],
  print: {
    orientation: "portrait",
    fitToOnePageWide: true,
    breaksBefore: [],
    header: "",
    footer: "",
  },
});

/** The demo with the sheets given in place of its own of the same name, and without its terms. */
async function quote(job: string, ...more: readonly Drawing[]) {
  const replaced = new Set(["Quotation terms", ...more.map(({ name }) => name)]);
  const drawings = [...demoDrawings().filter(({ name }) => !replaced.has(name)), ...more];
  const workbook = fileWorkbook(snapshotParts(drawnWorkbook("demo.xlsx", drawings)), "demo.xlsx");
  const takeOff = await takeOffWorkbook(workbook, defaultSettings);
  if (!takeOff.ok) throw new Error(takeOff.error.message);
  const prices = await priceWorkbook(workbook, takeOff.value, defaultSettings, today);
  if (!prices.ok) throw new Error(prices.error.message);
  const wanted = { job, today };
  const quoted = await quoteJob(workbook, takeOff.value, prices.value, defaultSettings, wanted);
  const price = prices.value.jobs.find((each) => each.job.toLowerCase() === job.toLowerCase());
  return { quoted, price };
}

async function saved(job: string, ...more: readonly Drawing[]) {
  const { quoted, price } = await quote(job, ...more);
  if (!quoted.ok || price === undefined) throw new Error("Not quoted");
  const snapshot = quoted.value.workbook;
  const bytes = fileWorkbook(snapshotParts(snapshot), snapshot.name).bytes();
  const opened = openFile(bytes, "quote.xlsx");
  if (!opened.ok) throw new Error(opened.error.message);
  const sheets = await opened.value.sheets();
  const block = await opened.value.read({ kind: "sheet", sheet: sheets[0]?.name ?? "" });
  if (!block.ok) throw new Error(block.error.message);
  return { price, bytes, sheets, rows: block.value.rows, findings: quoted.value.findings };
}

const job = "Tool crib, Alder plant";
const terms = typedSheet(
  "Terms",
  ["Quotation term", "Job", "Text"],
  ["Firm", "", "Invented Partitions"],
  ["Customer", job.toUpperCase(), "Invented Warehouse"],
  ["Valid for (days)", "", "45"],
  ["Inclusion", "", "=doors"],
  ["Exclusion", "Another job", "nobody sees this"],
);

describe("a quotation saved as its own workbook", () => {
  test("shows each counted opening, the price and the terms", async () => {
    const { rows, price } = await saved(job, terms);
    const lines = rows.map((cells) => cells.map(cellText).join("|").replace(/\|+$/, ""));
    expect(lines).toEqual(
      expect.arrayContaining([
        "From|Invented Partitions",
        "For|Invented Warehouse",
        "Date|2026-06-27",
        "Valid until|2026-08-11",
        `A-102|Sliding door|4'-0" x 7'-0"|left|2`,
        `Price in $||||${price.rollUp.price / 100}`,
        "=doors",
        "Openings not in this price: A-113",
        ...price.alternates.map(
          ({ name, kind, addsPrice }) => `${name} (${kind})||||${addsPrice / 100}`,
        ),
      ]),
    );
    expect(price.alternates).toHaveLength(3);
    expect(lines.join("\n")).not.toContain("nobody sees this");
    expect(lines.some((line) => line.startsWith("A-113|"))).toBe(false);
  });

  test("has one sheet, and no part that could hold more", async () => {
    const { bytes, sheets } = await saved(job, terms);
    expect(sheets.map(({ name, visible }) => [name, visible])).toEqual([["Quotation", true]]);
    const parts = Object.keys(unzipSync(bytes));
    expect(
      parts.filter((part) => /comment|custom|docProps|drawing|externalLink/i.test(part)),
    ).toEqual([]);
  });

  test("holds nothing of cost, profit, hours, suppliers or reasons in any part", async () => {
    const { bytes, price } = await saved(job, terms);
    const all = Object.entries(unzipSync(bytes))
      .map(([part, content]) => `${part}\n${strFromU8(content)}`)
      .join("\n")
      .replaceAll(/<pageMargins[^>]*>/g, "")
      .replaceAll("Install by the supplier's instructions", "")
      .replaceAll("Install by the supplier&apos;s instructions", "");
    expect(all).toContain("Invented Partitions");
    expect(all).not.toMatch(
      /cost|margin|markup|profit|overhead|burden|contingenc|wage|labou?r|hours|minutes|supplier|rates/i,
    );
    expect(all).not.toMatch(/<f[ >]/);
    const { alternates, rollUp } = price;
    const amounts = [rollUp, ...alternates.map((alternate) => alternate.rollUp)].flatMap(
      ({ lines }) => lines.map(({ amount }) => amount),
    );
    const shown = new Set([rollUp.price, rollUp.priceWithTax]);
    const hidden = [...amounts, ...alternates.map(({ addsCost }) => addsCost)].filter(
      (amount) => Math.abs(amount) > 1000 && !shown.has(amount),
    );
    expect(hidden.length).toBeGreaterThan(10);
    for (const amount of hidden) expect(all).not.toContain(`>${amount / 100}<`);
  });

  test("says that terms are the starter's where there is no sheet of them", async () => {
    const { findings, rows } = await saved(job);
    expect(findings.map(({ code }) => code)).toEqual([
      "terms-are-starter",
      "quoted-without-openings",
    ]);
    expect(rows.flat().map(cellText).join("\n")).toContain("Starter text: ");
  });
});

describe("a job is not quoted", () => {
  test("that the workbook does not have", async () => {
    const { quoted } = await quote("Elsewhere");
    expect(quoted).toEqual({ ok: false, error: expect.stringContaining("Jobs of this workbook") });
  });

  test("whose capacity cannot be read", async () => {
    const rates = typedSheet("Rates", ["Rate", "Usual"], ["One trolley carries", "heavy"]);
    const { quoted } = await quote(job, rates);
    expect(quoted).toEqual({ ok: false, error: expect.stringContaining("heavy") });
  });
});
