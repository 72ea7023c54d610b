import { describe, expect, test } from "@jest/globals";
import { defaultSettings } from "../../src/app/settings";
import {
  firstState,
  isBusy,
  nextState,
  type TakeOffEvent,
  type TakeOffState,
} from "../../src/pane/state/takeOffState";

const fault = { code: "workbook-closed", message: "It is closed." } as const;
const after = (...events: readonly TakeOffEvent[]): TakeOffState =>
  events.reduce(nextState, firstState);

describe("the state of the take-off", () => {
  test.each<readonly [string, readonly TakeOffEvent[], Partial<TakeOffState>]>([
    ["begins by reading", [], { phase: "reading", progress: 0 }],
    [
      "counts as far as it says",
      [{ kind: "began" }, { kind: "progressed", progress: 0.4 }],
      { phase: "counting", progress: 0.4 },
    ],
    [
      "stays stopped when a last step comes in",
      [{ kind: "stopped" }, { kind: "progressed", progress: 0.5 }],
      { phase: "stopped" },
    ],
    ["says why the host failed", [{ kind: "failed", fault }], { phase: "failed", fault }],
    [
      "keeps the fault in sight until it has counted again",
      [{ kind: "failed", fault }, { kind: "began" }],
      { phase: "reading", fault },
    ],
    [
      "takes new settings at once",
      [{ kind: "settings", settings: { ...defaultSettings, unit: "mm" } }],
      { settings: { ...defaultSettings, unit: "mm" } },
    ],
  ])("%s", (_, events, expected) => {
    expect(after(...events)).toMatchObject(expected);
  });

  test.each<readonly [TakeOffState["phase"], boolean]>([
    ["reading", true],
    ["counting", true],
    ["ready", false],
    ["stopped", false],
    ["failed", false],
  ])("%s is busy: %s", (phase, busy) => {
    expect(isBusy({ ...firstState, phase })).toBe(busy);
  });
});
