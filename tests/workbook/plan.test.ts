import { describe, expect, test } from "@jest/globals";
import { planWriting, type StandingSheet } from "../../src/workbook/plan";
import { drawing } from "./drawings";

const mark = { kind: "hardware", subject: "A" };
const ours = drawing("Hardware", mark, []);
const sheet = (name: string, more: Partial<StandingSheet> = {}): StandingSheet => ({
  name,
  mark: null,
  isProtected: false,
  isTouched: false,
  ...more,
});

describe("where a drawing goes", () => {
  test("of two sheets with its mark, the one with its name, else the first", () => {
    const copies = [sheet("Copy", { mark }), sheet("Hardware", { mark })];
    expect(planWriting([ours], copies, false)).toMatchObject({ value: [{ name: "Hardware" }] });
    const renamed = [sheet("One", { mark }), sheet("Two", { mark })];
    expect(planWriting([ours], renamed, false)).toMatchObject({ value: [{ name: "One" }] });
  });

  test("drawings of one act never get one name", () => {
    const plan = planWriting([{ ...ours, mark: null }, ours], [sheet("hardware")], false);
    expect(plan).toMatchObject({
      value: [{ name: "Hardware (2)" }, { name: "Hardware (3)" }],
    });
  });

  test("a protected workbook still lets a sheet be replaced, but none be kept", () => {
    const standing = (isTouched: boolean): StandingSheet[] => [sheet("A", { mark, isTouched })];
    expect(planWriting([ours], standing(false), true)).toMatchObject({ ok: true });
    expect(planWriting([ours], standing(true), true)).toMatchObject({
      error: { code: "workbook-protected" },
    });
  });

  test("two drawings of one mark are a mistake of ours", () => {
    expect(() => planWriting([ours, ours], [], false)).toThrow(RangeError);
  });
});
