import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { nameInFormula, nearestName, normalName } from "../../../src/core/formulas/names";
import { run } from "./running";

describe("one name however it is typed", () => {
  test.each([
    ["Post height", "post_height"],
    ["POST_HEIGHT", "post_height"],
    [" post - height: ", "post_height"],
    ["Width (in.)", "width_in"],
    ["leaf.width", "leaf_width"],
    ["Türbreite", "türbreite"],
    ["ｗｉｄｔｈ", "width"],
    ["2nd lock", "2nd_lock"],
    ["___", ""],
    ["#", ""],
  ])("%s is %s", (typed, normal) => {
    expect(normalName(typed)).toBe(normal);
  });

  test("and normal names stay as they are", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => {
        const once = normalName(text);
        expect(normalName(once)).toBe(once);
      }),
    );
  });

  test.each(["post_height", "POST_HEIGHT", "Post_Height", "[Post height]", "[ post-height ]"])(
    "a formula may write %s",
    (written) => {
      expect(run(written, { "Post height": 84 })).toBe(84);
    },
  );

  test("a word that is no function's here is a name", () => {
    expect(run("min + [if]", { min: 1, if: 2 })).toBe(3);
  });

  test.each(["post_height", "Post height", "2nd lock", "Tür", "a.b"])(
    "%s can be read back from how a formula writes it",
    (name) => {
      expect(run(nameInFormula(name), { [name]: 7 })).toBe(7);
    },
  );
});

describe("the nearest name", () => {
  const known = ["post_height", "height", "width", "leaf_width", "Tail run", "ft"];
  test.each([
    ["post_hieght", "post_height"],
    ["hight", "height"],
    ["Heigth", "height"],
    ["widht", "width"],
    ["leafwidth", "leaf_width"],
    ["tailrun", "Tail run"],
    ["f", "ft"],
    ["post_height_of_door", undefined],
    ["colour", undefined],
    ["", undefined],
  ])("to %s is %s", (typed, nearest) => {
    expect(nearestName(typed, known)).toBe(nearest);
  });

  test("is the earlier of two that are as near", () => {
    expect(nearestName("bat", ["cat", "hat"])).toBe("cat");
  });

  test("is found among long names without delay", () => {
    const long = "x".repeat(100_000);
    expect(nearestName(long, [long, `${long}y`])).toBe(long);
  });
});
