import { describe, expect, test } from "@jest/globals";
import { estimateRows, scheduleRow } from "./notation";

const nearIn = (rows: readonly ReturnType<typeof scheduleRow>[]) =>
  estimateRows(rows).findings.filter(({ code }) => code === "size-nearly-alike");

describe("sizes that no tape tells apart", () => {
  test("are told once for an opening, at the cell that they come from", () => {
    const found = nearIn([
      scheduleRow("8' x 7' on 8'", { mark: "A-1", quantity: 2 }),
      scheduleRow("8' x 2134 mm on 8'", { mark: "A-2" }),
    ]);
    expect(found).toMatchObject([
      {
        level: "note",
        mark: "A-2",
        place: { sheet: "Schedule", row: 2, column: 5 },
        found: `84.0157"`,
        message: expect.stringMatching(/^JAMB is 84\.0157" here and 84" elsewhere .* 1\/16" apart/),
      },
    ]);
  });

  test("are told of those of fewer pieces, whichever was typed first", () => {
    const found = nearIn([
      scheduleRow("8' x 7' on 8'", { mark: "A-1" }),
      scheduleRow("8' x 2134 mm on 8'", { mark: "A-2", quantity: 3 }),
    ]);
    expect(found.map(({ mark, found: size }) => [mark, size])).toEqual([["A-1", `84"`]]);
  });

  test("of as many pieces are told of what no tape shows", () => {
    const wider = scheduleRow("2438 mm x 7' on 8'", { mark: "A-1" });
    const plain = scheduleRow("8' x 7' on 8'", { mark: "A-2" });
    for (const rows of [
      [wider, plain],
      [plain, wider],
    ]) {
      expect(nearIn(rows)).toMatchObject([{ mark: "A-1", place: { column: 4 } }]);
    }
  });

  test("are none where they are alike, a sixteenth apart, or of two jobs", () => {
    expect(nearIn([scheduleRow("8' x 7' on 8'"), scheduleRow(`96" x 84" on 8'`)])).toEqual([]);
    expect(nearIn([scheduleRow("8' x 7' on 8'"), scheduleRow(`8'-0 1/16" x 7' on 8'`)])).toEqual(
      [],
    );
    expect(
      nearIn([
        scheduleRow("8' x 7' on 8'", { job: "One" }),
        scheduleRow("8' x 2134 mm on 8'", { job: "Other" }),
      ]),
    ).toEqual([]);
  });

  test("of two ways are near only where both are", () => {
    const found = nearIn([
      scheduleRow("8' x 7' on 8'", { mark: "A-1", type: "fixed transom" }),
      scheduleRow("2438 mm x 8' on 8'", { mark: "A-2", type: "fixed transom" }),
    ]);
    expect(found.filter(({ message }) => message.startsWith("PANEL"))).toEqual([]);
  });
});
