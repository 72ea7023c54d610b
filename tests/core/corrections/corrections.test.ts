import { describe, expect, test } from "@jest/globals";
import type { Inches } from "../../../src/core/base/units";
import { correctJobs, type CorrectionInput } from "../../../src/core/corrections/corrections";
import { correctionWords } from "../../../src/core/corrections/correctedLine";
import { numberStyle, writeLength } from "../../../src/core/lengths/writeLength";
import type { Line } from "../../../src/core/takeoff/takeOff";
import { pieces } from "../../../src/core/base/units";
import { writeRowName } from "../../../src/core/corrections/rowName";
import { correction, line, readRow, recordOf, sheet } from "./typed";

const rules = {
  unit: "in",
  showLength: (length: Inches) => writeLength(length, numberStyle),
} as const;

const jobOf = (job: string, ...lines: readonly ReturnType<typeof line>[]) => ({
  job,
  lines: lines.map((each): Line => ({ ...each, quantity: pieces(each.quantity), counts: [] })),
});

/** The job Crib with 14 nuts and 2 jambs of 84 in. */
const crib = jobOf("Crib", line("NUT", 14), line("JAMB", 2, 84));
const correct = (input: Partial<CorrectionInput>, ...jobs: readonly (typeof crib)[]) =>
  correctJobs(
    jobs.length === 0 ? [crib] : jobs,
    { record: recordOf([]), sheets: [], ...input },
    rules,
  );
const onRecord = (...corrections: Parameters<typeof recordOf>[0]) =>
  correct({ record: recordOf(corrections), sheets: [sheet(...corrections.map(shown))] });
const shown = ({ name, typed }: Parameters<typeof recordOf>[0][number]) =>
  readRow(writeRowName(name), typed);

const quantities = ({ jobs }: ReturnType<typeof correct>) =>
  jobs.map(({ lines }) => lines.map(({ item, quantity }) => `${quantity} ${item}`).join(", "));
const codes = ({ findings }: ReturnType<typeof correct>) =>
  findings.map(({ finding }) => finding.code);

describe("a correction of a line", () => {
  test.each([
    ["+3", 17],
    ["-2", 12],
    ["=20", 20],
    ["20", 20],
    ["=0", 0],
  ])("%s of 14 makes %i", (text, quantity) => {
    const result = onRecord(correction("crib | nut | ", text));
    expect(quantities(result)).toEqual([`${quantity} NUT, 2 JAMB`]);
    expect(codes(result)).toEqual([]);
    expect(result.jobs[0]?.lines[0]).toMatchObject({
      counted: 14,
      typed: { name: { kind: "line" } },
    });
  });

  test.each([
    ["many", "correction-unreadable"],
    ["+1.5", "correction-not-whole"],
    ["-15", "correction-below-zero"],
  ])("%s leaves the line as it is counted and is a finding at its cell", (text, code) => {
    const result = onRecord(correction("Crib | NUT | ", text));
    expect(quantities(result)).toEqual(["14 NUT, 2 JAMB"]);
    const [said] = result.findings;
    expect(said?.finding).toMatchObject({
      code,
      found: text,
      job: "Crib",
      place: { sheet: "Hardware Crib", row: 7, column: 4 },
    });
    expect(result.kept[0]?.typed.correction).toBe(text);
  });

  test("without a reason or initials is used, and a note asks for them", () => {
    const result = onRecord(correction("Crib | NUT | ", "+1", { reason: "", by: "" }));
    expect(quantities(result)).toEqual(["15 NUT, 2 JAMB"]);
    expect(result.findings[0]?.finding.message).toContain("has no reason and no initials");
  });

  test("that stands instead of a count which has changed since is doubted", () => {
    const before = { ...correction("Crib | NUT | ", "=20"), counted: 10 };
    expect(codes(onRecord(before))).toEqual(["correction-outdated"]);
    expect(codes(onRecord({ ...before, counted: 14 }))).toEqual([]);
  });

  test("is told with who and why", () => {
    const [first] = onRecord(correction("Crib | NUT | ", "+3")).jobs[0]?.lines ?? [];
    expect(first && correctionWords(first)).toBe("+3 by AB: bent");
  });

  test("may be of the spares alone", () => {
    const spares = correction("Crib | NUT | ", "", { spares: "9" });
    expect(onRecord(spares).jobs[0]?.lines[0]).toMatchObject({ quantity: 14, ownSpares: 9 });
    const bad = correction("Crib | NUT | ", "", { spares: "a few" });
    expect(codes(onRecord(bad))).toEqual(["spares-not-whole"]);
  });
});

describe("a correction that no line takes", () => {
  test("is kept and flagged, never dropped", () => {
    const result = onRecord(correction("Crib | BOLT | ", "+3"));
    expect(quantities(result)).toEqual(["14 NUT, 2 JAMB"]);
    expect(result.jobs[0]?.strays).toHaveLength(1);
    expect(codes(result)).toEqual(["correction-without-line"]);
    expect(result.kept).toHaveLength(1);
  });

  test("counts again when its line comes back", () => {
    const record = recordOf([correction("Crib | JAMB | 96", "+1")]);
    const result = correct({ record }, jobOf("Crib", line("JAMB", 4, 96)));
    expect(quantities(result)).toEqual(["5 JAMB"]);
  });

  test("is told apart by its exact size", () => {
    expect(quantities(onRecord(correction("Crib | JAMB | 84.0157480315", "+1")))).toEqual([
      "14 NUT, 2 JAMB",
    ]);
  });

  test("takes the place of the first one of its line when that is cleared", () => {
    const both = recordOf([
      correction("Crib | NUT | ", "+3"),
      correction("Crib | NUT |  | #2", "+6"),
    ]);
    const rows = [
      readRow("Crib | NUT | "),
      readRow("Crib | NUT |  | #2", both.corrections[1]?.typed),
    ];
    expect(quantities(correct({ record: both, sheets: [sheet(...rows)] }))).toEqual([
      "20 NUT, 2 JAMB",
    ]);
  });
});

describe("a row added by hand", () => {
  const added = (cells: Parameters<typeof correction>[2]) =>
    onRecord(correction("Crib | #1", "", cells));

  test("is a line of its own behind those that are counted", () => {
    const result = added({ item: "HOOK", quantity: "4", size: `1'-0"` });
    expect(quantities(result)).toEqual(["14 NUT, 2 JAMB, 4 HOOK"]);
    expect(result.jobs[0]?.lines.at(-1)).toMatchObject({ size: [12], counted: 0, counts: [] });
    expect(codes(result)).toEqual([]);
  });

  test.each([
    [{ quantity: "4" }, "added-without-item"],
    [{ item: "HOOK" }, "added-without-quantity"],
    [{ item: "HOOK", quantity: "some" }, "added-not-whole"],
    [{ item: "HOOK", quantity: "-4" }, "added-not-whole"],
    [{ item: "HOOK", quantity: "0" }, "added-not-whole"],
    [{ item: "HOOK", quantity: "4", size: "wide" }, "added-size"],
  ])("%j is not counted, says so as a stop, and is kept", (cells, code) => {
    const result = added(cells);
    expect(quantities(result)).toEqual(["14 NUT, 2 JAMB"]);
    expect(result.findings.map(({ finding }) => [finding.code, finding.level])).toEqual([
      [code, "stop"],
    ]);
    expect(result.jobs[0]?.added).toMatchObject([{ line: null }]);
    expect(result.kept).toHaveLength(1);
  });
});

describe("a row that lost its name", () => {
  test("is known by the item and the size that it shows", () => {
    const row = readRow(
      null,
      { item: "JAMB", size: `7'-0"`, quantity: "2", correction: "+1", reason: "x", by: "y" },
      { counted: 2 },
    );
    expect(quantities(correct({ sheets: [sheet(row)] }))).toEqual(["14 NUT, 3 JAMB"]);
  });

  test("is a row added by hand where the job has no such line", () => {
    const row = readRow(null, { item: "HOOK", quantity: "2" }, { counted: 2 });
    expect(quantities(correct({ sheets: [sheet(row)] }))).toEqual(["14 NUT, 2 JAMB, 2 HOOK"]);
  });
});

describe("a job that was renamed", () => {
  const record = recordOf([
    correction("Crib | NUT | ", "+3"),
    correction("Crib | #1", "", { item: "HOOK", quantity: "4" }),
  ]);
  const renamed = jobOf("Crib two", line("NUT", 14));

  test("keeps its corrections, with a guess which job it is now", () => {
    const result = correct({ record }, renamed);
    expect(quantities(result)).toEqual(["14 NUT"]);
    expect(result.lost).toMatchObject([{ job: "Crib", guess: "Crib two" }]);
    expect(result.lost[0]?.corrections).toHaveLength(2);
    expect(codes(result)).toContain("job-gone");
  });

  test("is not guessed to be a job that stood beside it", () => {
    const result = correct({ record: { ...record, jobs: ["Crib", "Crib two"] } }, renamed);
    expect(result.lost).toMatchObject([{ guess: null }]);
  });

  test("takes them along once a person says yes", () => {
    const row = readRow("> | Crib | Crib two", { correction: "yes" });
    const result = correct({ record, sheets: [sheet(row)] }, renamed);
    expect(quantities(result)).toEqual(["17 NUT, 4 HOOK"]);
    expect(result.lost).toEqual([]);
  });

  test("keeps another answer beside the question", () => {
    const row = readRow("> | Crib | Crib two", { correction: "ask Jo" });
    const result = correct({ record, sheets: [sheet(row)] }, renamed);
    expect(result.lost).toMatchObject([{ answer: { typed: { correction: "ask Jo" } } }]);
  });

  test("loses nothing where the new job has corrections of its own", () => {
    const both = recordOf([...record.corrections, correction("Crib two | NUT | ", "+5")]);
    const row = readRow("> | Crib | Crib two", { correction: "y" });
    const result = correct({ record: both, sheets: [sheet(row)] }, renamed);
    expect(quantities(result)).toEqual(["19 NUT, 4 HOOK"]);
    expect(result.jobs[0]?.strays).toMatchObject([{ typed: { correction: "+3" } }]);
  });
});
