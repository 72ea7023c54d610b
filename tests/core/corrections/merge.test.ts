import { describe, expect, test } from "@jest/globals";
import { mergeCorrections } from "../../../src/core/corrections/merge";
import { noRecord } from "../../../src/core/corrections/record";
import { writeRowName } from "../../../src/core/corrections/rowName";
import { correction, readRow, recordOf, sheet } from "./typed";

const nut = "Crib | NUT | ";
const jamb = "Crib | JAMB | 84";
const cells = { reason: "bent", by: "AB" };
const typedOn = (text: string) => ({ correction: text, ...cells });

/** Each correction as `name: what was typed`, in order of names. */
const kept = (...given: Parameters<typeof mergeCorrections>): readonly string[] =>
  mergeCorrections(...given)
    .corrections.map(
      ({ name, typed }) => `${writeRowName(name)}: ${typed.quantity}${typed.correction}`,
    )
    .sort();
const doubts = (...given: Parameters<typeof mergeCorrections>): readonly string[] =>
  mergeCorrections(...given).doubts.map(({ code, name }) => `${code} ${writeRowName(name)}`);

describe("what stands on a sheet and what is on record", () => {
  const record = recordOf([correction(nut, "+3")]);

  test("a correction that is typed for the first time is kept", () => {
    expect(kept(noRecord, [sheet(readRow(nut, typedOn("+3")), readRow(jamb))])).toEqual([
      `${nut}: +3`,
    ]);
  });

  test("a correction that is typed over is the new one", () => {
    expect(kept(record, [sheet(readRow(nut, typedOn("+4")))])).toEqual([`${nut}: +4`]);
  });

  test("a correction whose cells are cleared is taken away", () => {
    const given = [record, [sheet(readRow(nut), readRow(jamb))]] as const;
    expect(kept(...given)).toEqual([]);
    expect(doubts(...given)).toEqual([]);
  });

  test("a correction whose row is deleted comes back, and a doubt says so", () => {
    const given = [record, [sheet(readRow(jamb))]] as const;
    expect(kept(...given)).toEqual([`${nut}: +3`]);
    expect(doubts(...given)).toEqual([`row-gone ${nut}`]);
  });

  test("a correction whose sheet is deleted comes back, and a doubt says so", () => {
    expect(kept(record, [])).toEqual([`${nut}: +3`]);
    expect(doubts(record, [])).toEqual([`sheet-gone ${nut}`]);
  });

  test("a sheet that lost its record keeps all that stands on it", () => {
    expect(kept(noRecord, [sheet(readRow(nut, typedOn("+3")))])).toEqual([`${nut}: +3`]);
  });

  test("a row that is copied with its correction is one correction", () => {
    const row = readRow(nut, typedOn("+3"));
    expect(kept(record, [sheet(row, row)])).toEqual([`${nut}: +3`]);
  });

  test("two rows that say different things of a line are both kept, and the first counts", () => {
    const rows = [readRow(nut, typedOn("+5")), readRow(nut, typedOn("+6"))];
    expect(kept(record, [sheet(...rows)])).toEqual(["Crib | NUT |  | #2: +6", `${nut}: +5`]);
  });

  test("a row that is put in is a row added by hand, with a number of its own", () => {
    const row = readRow(null, { item: "HOOK", quantity: "4" });
    const given = [noRecord, [sheet(readRow("Crib | #1"), readRow("Crib | #2"), row)]] as const;
    expect(kept(...given)).toEqual(["Crib | #3: 4"]);
    expect(doubts(...given)).toEqual(["put-in Crib | #3"]);
  });
});

describe("a sheet that was not written again", () => {
  const before = recordOf([correction(nut, "+3")]);
  // The correction was changed elsewhere since; the old sheet still shows what it showed.
  const newer = recordOf([correction(nut, "+9")]);
  const record = {
    ...newer,
    sheets: [...before.sheets, ...newer.sheets.map((each) => ({ ...each, subject: "" }))],
  };

  test("does not bring its old correction back", () => {
    expect(kept(record, [sheet(readRow(nut, typedOn("+3")))])).toEqual([`${nut}: +9`]);
  });

  test("brings what is typed on it since, beside what it never showed", () => {
    expect(kept(record, [sheet(readRow(nut, typedOn("+4")))])).toEqual([
      "Crib | NUT |  | #2: +9",
      `${nut}: +4`,
    ]);
  });

  test("takes nothing away that it never showed", () => {
    expect(kept(record, [sheet(readRow(nut))])).toEqual([`${nut}: +9`]);
  });

  test("does not clear what another sheet says", () => {
    const now = { subject: "", rows: [readRow(nut, typedOn("+8"))] };
    for (const sheets of [
      [now, sheet(readRow(nut))],
      [sheet(readRow(nut)), now],
    ])
      expect(kept(record, sheets)).toEqual([`${nut}: +8`]);
  });

  test("does not add its put-in row a second time", () => {
    const row = readRow(null, { item: "HOOK", quantity: "4" });
    const seen = { ...recordOf([]), sheets: [{ subject: "Crib", rows: [row], spares: {} }] };
    expect(kept(seen, [sheet(row)])).toEqual([]);
  });
});
