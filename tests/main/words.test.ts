import { expect, test } from "@jest/globals";
import { readUnit, readWords } from "../../src/main/commandLine/words";

const options = { out: { type: "string" }, jobs: { type: "string", multiple: true } } as const;
const read = (...words: string[]) => readWords(words, options, "Use: it");

test("options and other words are told apart", () => {
  const words = read("A.xlsx", "--jobs", "One", "--jobs", "Two", "B.xlsx");
  expect(words).toMatchObject({
    ok: true,
    value: { values: { jobs: ["One", "Two"] }, positionals: ["A.xlsx", "B.xlsx"] },
  });
});

test.each(["--help", "-h"])("%s is answered by the usage alone", (word) => {
  expect(read("A.xlsx", word)).toEqual({ ok: false, error: "Use: it" });
});

test.each([["--price"], ["--out"]])("%s alone is an error above the usage", (word) => {
  expect(read(word)).toEqual({
    ok: false,
    error: expect.stringMatching(/--(price|out)[^]*\n\nUse: it$/),
  });
});

test("what is help's word as the value of another option is that value", () => {
  expect(read("--out=-h")).toMatchObject({ ok: true, value: { values: { out: "-h" } } });
});

test("a unit is one of two, or not said", () => {
  expect([readUnit("in"), readUnit("mm"), readUnit(undefined)].every(({ ok }) => ok)).toBe(true);
  expect(readUnit("ft")).toEqual({ ok: false, error: "--unit is in or mm, and not ft." });
});
