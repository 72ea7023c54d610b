/** Alternates that change the schedule: counted again, priced beside the base, refused with a reason. */
import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { placeName, type CellValue } from "../../../src/core/base/cell";
import { priceWorkbook } from "../../../src/app/pricing/priceWorkbook";
import { quoteJob } from "../../../src/app/pricing/quoteJob";
import { defaultSettings } from "../../../src/app/settings";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import { scheduleHeadings, workbookOf, type TypedSheets } from "../typedWorkbook";

type Row = readonly CellValue[];
const today = 46_200;

const headings: Row = [...scheduleHeadings, "Tail post", "Transom", "Closer"];
const doors = (closer: CellValue): readonly Row[] => [
  headings,
  ["Crib", "A-1", 2, "sliding door", "4'", "7'", "8'", "yes", "yes", closer],
  ["Crib", "A-2", 1, "sliding door", "8'", "7'", "8'", "yes", "no", closer],
  ["Crib", "A-3", 1, "hinged door", "3'", "7'", "8'", "no", "no", closer],
];

/** The starter book does not know closers; this one hangs one on each sliding door that asks for it. */
const closerBook: TypedSheets = {
  Parts: [
    ["Opening type", "Bag", "Item", "Quantity", "When", "Minutes", "Basis"],
    ["sliding door", "Leaf", "PANEL", "1", "", "20", "test"],
    ["sliding door", "Leaf", "CLOSER", "1", 'closer = "yes"', "30", "test"],
    ["hinged door", "Leaf", "HINGE", "3", "", "10", "test"],
  ],
};
const items: readonly Row[] = [
  ["Item", "Description", "Family", "Unit", "Unit cost", "Weight"],
  ["PANEL", "Panel", "Panels", "each", 140, 60],
  ["HINGE", "Hinge", "Leaf", "each", 7, 1],
  ["CLOSER", "Closer", "Closers", "each", 90, 5],
];
const alternates = (...rows: readonly Row[]): readonly Row[] => [
  ["Alternate", "Kind", "Job", "Adds", "Item or name", "Quantity", "Each", "To", "Openings"],
  ...rows,
];
const change = (column: CellValue, to: CellValue, openings: CellValue = null, job = ""): Row => [
  "Other",
  "alternate",
  job,
  "change",
  column,
  null,
  null,
  to,
  openings,
];

async function priced(sheets: TypedSheets) {
  const workbook = workbookOf(sheets);
  const taken = await takeOffWorkbook(workbook, defaultSettings);
  if (!taken.ok) throw new Error(taken.error.message);
  const prices = await priceWorkbook(workbook, taken.value, defaultSettings, today);
  if (!prices.ok) throw new Error(prices.error.message);
  return { workbook, takeOff: taken.value, prices: prices.value };
}
const own = { ...closerBook, Items: items };
/** The first job's alternates, and the findings about alternates with their cells. */
async function offered(sheets: TypedSheets) {
  const { prices } = await priced(sheets);
  const findings = prices.findings.filter(({ code }) => code.startsWith("alternate-"));
  return {
    job: prices.jobs[0],
    alternates: prices.jobs.flatMap((job) => job.alternates),
    findings: findings.map(({ code, place, message }) => ({
      code,
      cell: place === null ? "" : placeName(place),
      message,
    })),
  };
}

describe("an alternate that takes the closer out", () => {
  test("costs what the job costs that is counted without it, to the cent", async () => {
    const {
      job,
      alternates: of,
      findings,
    } = await offered({
      Schedule: doors("yes"),
      ...own,
      Alternates: alternates(change("Closer", "none")),
    });
    const without = await offered({ Schedule: doors("no"), ...own });
    const [alternate] = of;
    expect(findings).toEqual([]);
    expect(alternate?.rollUp.lines).toEqual(without.job?.rollUp.lines);
    expect(alternate?.addsPrice).toBe((without.job?.rollUp.price ?? 0) - (job?.rollUp.price ?? 0));
    expect(alternate?.addsPrice).toBeLessThan(0);
    expect(alternate?.addsHours).toBeLessThan(0);
    expect(alternate?.how).toBe("counted again with Closer none on every opening");
  });

  test("takes it out of the openings it names, by mark or by type", async () => {
    const only = (openings: CellValue) =>
      offered({
        Schedule: doors("yes"),
        ...own,
        Alternates: alternates(change("closer", "no", openings)),
      });
    const [one] = (await only("a-1")).alternates;
    const [both] = (await only("A-1, A-2")).alternates;
    const [byType] = (await only("Sliding door")).alternates;
    expect(one?.how).toBe("counted again with Closer no on 1 of 3 openings");
    expect(both?.addsCost).toBe(byType?.addsCost);
    expect(both?.addsCost).toBeLessThan(one?.addsCost ?? 0);
  });

  test("is in the quotation with what it adds to the price, and nothing of its cost", async () => {
    const { workbook, takeOff, prices } = await priced({
      Schedule: doors("yes"),
      ...own,
      Alternates: alternates(change("Closer", "no")),
    });
    const quoted = await quoteJob(workbook, takeOff, prices, defaultSettings, {
      job: "Crib",
      today,
    });
    if (!quoted.ok) throw new Error(quoted.error);
    const words = JSON.stringify(quoted.value.drawing.rows);
    const added = prices.jobs[0]?.alternates[0];
    expect(words).toContain("Other (alternate)");
    expect(words).toContain(`${(added?.addsPrice ?? 0) / 100}`);
    expect(words).not.toContain(`${(added?.addsCost ?? 0) / 100}`);
    expect(words).not.toContain("counted again");
  });
});

test("an alternate that changes nothing differs by zero", async () => {
  const values: readonly (readonly [string, CellValue, string])[] = [
    ["Closer", "yes", ""],
    ["Transom", "yes", "A-1"],
    ["Type", "hinged door", "A-3"],
    ["Width", "8 ft", "A-2"],
    ["Tail post", "no", "A-3"],
  ];
  await fc.assert(
    fc.asyncProperty(fc.subarray([...values], { minLength: 1 }), async (chosen) => {
      const { alternates: of, findings } = await offered({
        Schedule: doors("yes"),
        ...own,
        Alternates: alternates(
          ...chosen.map(([column, to, openings]) => change(column, to, openings)),
        ),
      });
      expect(
        of.map(({ addsCost, addsPrice, addsHours }) => [addsCost, addsPrice, addsHours]),
      ).toEqual([[0, 0, 0]]);
      expect(findings.map(({ code }) => code)).toEqual(["alternate-changes-nothing"]);
    }),
    { numRuns: 8 },
  );
});

test("changes and typed additions of one name are one alternate", async () => {
  const both = await offered({
    Schedule: doors("yes"),
    ...own,
    Alternates: alternates(change("Closer", "no"), ["Other", null, null, "item", "HINGE", 4, null]),
  });
  const changed = await offered({
    Schedule: doors("yes"),
    ...own,
    Alternates: alternates(change("Closer", "no")),
  });
  expect(both.alternates).toHaveLength(1);
  expect(both.alternates[0]?.addsCost).toBeGreaterThan(changed.alternates[0]?.addsCost ?? 0);
  expect(both.alternates[0]?.how).toContain("with what is typed for it");
});

test("another type, another size and a field of the firm's own are counted by the starter book", async () => {
  for (const [column, to] of [
    ["Type", "hinged door"],
    ["Door width", "6'"],
    ["Post ht", "9'"],
  ] as const) {
    const { alternates: of, findings } = await offered({
      Schedule: doors("no"),
      Alternates: alternates(change(column, to, "A-1")),
    });
    expect(findings).toEqual([]);
    expect(of[0]?.addsCost).not.toBe(0);
  }
});

describe("is not offered, and says at its cell why", () => {
  test.each<readonly [string, Row, string, string, string]>([
    ["a column that is none", change("Closr", "no"), "alternate-column-unknown", "E2", "Closer"],
    [
      "a mark, which names an opening",
      change("Mark", "B"),
      "alternate-column-unknown",
      "E2",
      "Mark",
    ],
    ["a type that is none", change("Type", "slidng"), "alternate-not-counted", "H2", "slidng"],
    ["neither yes nor no", change("Transom", "perhaps"), "alternate-not-counted", "H2", "perhaps"],
    ["no length", change("Width", "wide"), "alternate-not-counted", "H2", "wide"],
    ["more than the book allows", change("Width", "40'"), "alternate-not-counted", "H2", "40'"],
    [
      "a mark that is not there",
      change("Closer", "no", "A-1, A-22", "Crib"),
      "alternate-openings-unknown",
      "I2",
      "A-2",
    ],
    [
      "openings of no job",
      change("Closer", "no", "Z-9"),
      "alternate-openings-nowhere",
      "I2",
      "Z-9",
    ],
    [
      "a job that is not there",
      change("Closer", "no", null, "Crab"),
      "alternate-job-unknown",
      "A2",
      "Did you mean Crib?",
    ],
    ["no column at all", change("", "no"), "alternate-wrong", "A2", "no column"],
  ])("%s", async (_what, row, code, cell, words) => {
    const { alternates: of, findings } = await offered({
      Schedule: doors("yes"),
      Alternates: alternates(row),
    });
    expect(of).toEqual([]);
    expect(findings).toEqual([
      { code, cell: `Alternates!${cell}`, message: expect.stringContaining(words) },
    ]);
  });

  test("an opening that would hang over an entered capacity", async () => {
    const { alternates: of, findings } = await offered({
      Schedule: doors("no"),
      Rates: [
        ["Rate", "Unit", "What it means", "Usual"],
        ["One trolley carries", "lb", "", 65],
      ],
      Alternates: alternates(change("Width", "10'", "A-1")),
    });
    expect(of).toEqual([]);
    expect(findings[0]?.message).toContain("the capacity entered is 65 lb");
  });
});

test("a name that no job has is told, and the others that stand beside it are changed", async () => {
  const { alternates: of, findings } = await offered({
    Schedule: doors("yes"),
    ...own,
    Alternates: alternates(change("Closer", "no", "A-1, A-9")),
  });
  expect(of[0]?.how).toBe("counted again with Closer no on 1 of 3 openings");
  expect(findings).toEqual([
    {
      code: "alternate-openings-partly",
      cell: "Alternates!I2",
      message: expect.stringContaining("names A-9,"),
    },
  ]);
});

test("what has no price in it makes it only a least, and it is not quoted", async () => {
  const { workbook, takeOff, prices } = await priced({
    Schedule: doors("no"),
    ...own,
    Items: items.map((row) => (row[0] === "CLOSER" ? [...row.slice(0, 4), null, 5] : row)),
    Alternates: alternates(change("Closer", "yes")),
  });
  expect(prices.jobs[0]?.alternates[0]?.notPriced).toEqual(["CLOSER"]);
  const quoted = await quoteJob(workbook, takeOff, prices, defaultSettings, { job: "Crib", today });
  if (!quoted.ok) throw new Error(quoted.error);
  expect(JSON.stringify(quoted.value.drawing.rows)).not.toContain("Other");
});
