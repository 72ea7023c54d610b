/**
 * The starter's sliding door against facts of the trade. Each is common practice, no source, unless
 * it says otherwise.
 */
import { describe, expect, test } from "@jest/globals";
import { workedCheck } from "./workedCheck";
import { byItem, count, opening, typeOf, type Counted } from "./openings";

const slidingDoor = typeOf("Sliding door");
const take = (text: string): Counted => count(slidingDoor, opening(text));
const items = (text: string) => byItem(take(text));
const levels = (text: string) => take(text).said.map(({ level }) => level);
const saying = (text: string, words: string) =>
  take(text).said.filter(({ message }) => message.includes(words));

describe("a sliding door 8 ft wide and 7 ft high on 7 ft posts", () => {
  const counted = take("8' x 7' on 7', tail post, concrete");

  // Common practice, no source.
  test("needs exactly this hardware", () => {
    expect(byItem(counted)).toEqual(workedCheck);
  });

  // Common practice, no source.
  test("has two panels of half its width", () => {
    expect(counted.counts["PANEL (48 x 84)"]).toBe(2);
  });

  // Assumed: the channel and the angle run over the whole leaf.
  test("has its cut pieces in their lengths", () => {
    expect(counted.counts).toMatchObject({
      "TRACK (192)": 1,
      "SPLICE (96)": 1,
      "ANGLE (96)": 1,
      "GUIDE (12)": 1,
    });
  });

  test("gives no formula an error, and says what is not settled", () => {
    expect(counted.errors).toEqual([]);
    expect(counted.said.map(({ level }) => level)).toEqual(["note", "note"]);
  });
});

describe("panels and clamp sets", () => {
  // Common practice, no source: up to and including 5 ft wide the leaf is one panel.
  test.each([
    ["4.99", 1],
    ["5", 1],
    ["5.01", 2],
    ["8", 2],
  ])("a leaf %s ft wide has %d panels", (width, panels) => {
    expect(items(`${width}' x 7' on 7', tail post, concrete`)["PANEL"]).toBe(panels);
  });

  // Common practice, no source: one panel needs no clamps, splice channel or bottom angle.
  test("a leaf of one panel has nothing that joins two", () => {
    const counted = items("5' x 7' on 7', tail post, concrete");
    for (const item of ["CLAMP PANEL", "SPLICE", "ANGLE", "FN 1/4"]) {
      expect(counted).not.toHaveProperty(item);
    }
    expect(counted["CB 1/4 x 1-1/4"]).toBe(2);
  });

  // Common practice, no source: 3 sets up to 8 ft high, 4 up to 10 ft; two clamps a set.
  test.each([
    ["8", "8", 6],
    ["10", "10", 8],
  ])("a wide leaf %s ft high has %s ft posts and %d panel clamps", (height, post, clamps) => {
    const counted = items(`6' x ${height}' on ${post}', tail post, concrete`);
    expect(counted).toMatchObject({ "CLAMP PANEL": clamps, "FN 1/4": clamps });
  });

  test("clamp sets turn at 8 ft exactly, whatever plates there are", () => {
    const sets = (height: number) => take(`6' x ${height}' on 12'`).sizes["clamp_sets"];
    expect([sets(8), sets(8.01), sets(10)]).toEqual([3, 4, 4]);
  });
});

describe("track", () => {
  // Common practice, no source: one section up to 6 ft, two above 8 ft.
  test.each([
    ["6", 1],
    ["8.01", 2],
    ["16", 2],
  ])("a door %s ft wide has %d sections, and nothing to say about it", (width, sections) => {
    const text = `${width}' x 7' on 7', tail post, concrete`;
    expect(items(text)["TRACK"]).toBe(sections);
    expect(saying(text, "practice differs")).toEqual([]);
  });

  test.each(["6.01", "7", "8"])("a door %s ft wide says that practice differs", (width) => {
    const notes = saying(`${width}' x 7' on 7', tail post, concrete`, "practice differs");
    expect(notes).toMatchObject([{ level: "note" }]);
  });

  test("sections add up to the track, which is twice the leaf", () => {
    expect(take("10' x 7' on 7'").counts["TRACK (120)"]).toBe(2);
  });
});

describe("hangers", () => {
  // Common practice, no source: without a post at the tail end there are two, and that is a warning.
  test("are two without a tail post, with a warning", () => {
    const text = "8' x 7' on 7', concrete";
    expect(items(text)).toMatchObject({
      "PLATE 7-7": 2,
      "CLAMP TRACK": 2,
      "HB 1/4 x 3/4": 4,
      "LW 1/4": 6,
    });
    expect(saying(text, "no post at the tail end")).toMatchObject([{ level: "warn" }]);
  });
});

describe("track plates", () => {
  const heights = [7, 8, 9, 10, 11, 12];
  const known = [
    "7-7",
    "8-7",
    "9-7",
    "10-7",
    "12-7",
    "8-8",
    "9-8",
    "10-8",
    "12-8",
    "10-10",
    "12-10",
  ];

  // Common practice, no source: eleven combinations, and anything else is a stop.
  test.each(heights.flatMap((post) => heights.map((door) => [post, door] as const)))(
    "on a %d ft post with a %d ft door exist only where practice knows one",
    (post, door) => {
      const counted = take(`4' x ${door}' on ${post}', tail post, concrete`);
      const plates = Object.keys(counted.counts).filter((item) => item.startsWith("PLATE"));
      if (known.includes(`${post}-${door}`)) expect(plates).toEqual([`PLATE ${post}-${door}`]);
      else
        expect(counted.errors).toContain(
          '=CHART("track plate", post_nominal, door_nominal): chart',
        );
    },
  );
});

describe("floor", () => {
  // Assumed: the anchor follows the floor.
  test.each([
    ["concrete", "FA 1/4"],
    ["CONCRETE", "FA 1/4"],
    ["wood", "LS 1/4 x 1-1/2"],
  ])("of %s takes two %s", (floor, anchor) => {
    expect(items(`4' x 7' on 7', tail post, ${floor}`)[anchor]).toBe(2);
  });

  test.each(["asphalt", ""])('of "%s" is a warning and counts no anchor', (floor) => {
    const text = `4' x 7' on 7', tail post, ${floor}`;
    expect(saying(text, "no floor anchors")).toMatchObject([{ level: "warn" }]);
    expect(Object.keys(items(text)).filter((item) => /^(FA|LS) /.test(item))).toEqual([]);
  });

  // Common practice, no source: at least 1 in of the closed leaf stands inside the guide.
  test("guide begins 1 in inside the tail of the closed leaf", () => {
    expect(take("4' x 7' on 7'").sizes).toMatchObject({ leaf_width: 48, guide_start: 47 });
  });
});

describe("order of work", () => {
  const door = "6' x 7' on 7', tail post, concrete";

  // Common practice, no source.
  test("puts a transom in first", () => {
    expect(saying(`${door}, transom`, "transom in before")).toMatchObject([{ level: "note" }]);
    expect(saying(door, "transom")).toEqual([]);
  });

  // Common practice, no source; how much room it takes is assumed: track beyond the opening and leaf.
  test("loads from the tail end where the tail run is long enough", () => {
    const counted = take(`${door}, tail run 12'`);
    expect(counted.sizes).toMatchObject({ loading_run: 144, jamb_late: false });
    expect(counted.steps).toMatchObject({ "Latch side": 10, Overhead: 20, Track: 30 });
    expect(saying(`${door}, tail run 12'`, "from its tail end")).toHaveLength(1);
  });

  test("brings jamb and strike last where the tail run is too short", () => {
    const counted = take(`${door}, tail run 11.9'`);
    expect(counted.sizes["jamb_late"]).toBe(true);
    expect(counted.steps).toMatchObject({ "Latch side": 55, Trolleys: 50, "Track stop": 60 });
    expect(saying(`${door}, tail run 11.9'`, "jamb and strike follow")).toHaveLength(1);
  });

  test("is left to the crew where no tail run is given", () => {
    expect(saying(door, "no tail run is given")).toMatchObject([{ level: "note" }]);
    expect(take(door).errors).toEqual([]);
  });

  test("warns of a leaf that cannot open", () => {
    expect(saying(`${door}, tail run 5.9'`, "to open fully")).toMatchObject([{ level: "warn" }]);
    expect(saying(`${door}, tail run 6'`, "to open fully")).toEqual([]);
  });
});

describe("stops", () => {
  // Common practice, no source.
  test.each([
    ["a door taller than its post", "4' x 8' on 7', tail post, concrete"],
    ["a leaf under 2 ft", "1.99' x 7' on 7', tail post, concrete"],
    ["a leaf over 16 ft", "16.01' x 7' on 7', tail post, concrete"],
    ["a door over 10 ft high", "4' x 10.5' on 12', tail post, concrete"],
  ])("say so for %s", (_what, text) => {
    expect(levels(text)).toContain("stop");
  });

  test.each(["2' x 7' on 7', tail post, concrete", "16' x 7' on 7', tail post, concrete"])(
    "say nothing at the ends of the range: %s",
    (text) => {
      expect(levels(text)).not.toContain("stop");
    },
  );

  test("come of a post height that was not given", () => {
    expect(take("4' x 7', tail post, concrete").errors).toContain(
      "door_nominal > post_nominal: missing",
    );
  });
});
