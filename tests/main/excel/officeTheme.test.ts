/** @jest-environment jsdom */
import { afterEach, describe, expect, test } from "@jest/globals";
import { followOfficeTheme, isDarkColour } from "../../../src/main/excel/officeTheme";

/** A page in a system that asks for dark colours or not, in Excel with this theme. */
function themed(isSystemDark: boolean, officeTheme: object | undefined) {
  const shown: (() => void)[] = [];
  const system = Object.assign(new EventTarget(), { matches: isSystemDark });
  Object.assign(globalThis, {
    matchMedia: () => system,
    Office: {
      context: { officeTheme },
      addin: {
        onVisibilityModeChanged: (handler: () => void) => {
          shown.push(handler);
          return Promise.resolve(() => Promise.resolve());
        },
      },
    },
  });
  const heard: string[] = [];
  const theme = followOfficeTheme((each) => heard.push(each));
  return { theme, heard, system, show: () => shown.forEach((handler) => handler()) };
}

afterEach(() => {
  Reflect.deleteProperty(globalThis, "Office");
});

describe("the pane's theme", () => {
  test.each([
    ["Excel says dark", false, { isDarkTheme: true }, "dark"],
    ["Excel says light in a dark system", true, { isDarkTheme: false }, "light"],
    ["Excel tells a colour only", false, { bodyBackgroundColor: "#262626" }, "dark"],
    ["Excel tells nothing in a dark system", true, undefined, "dark"],
    ["Excel tells nothing in a light system", false, {}, "light"],
  ])("%s", (_, isSystemDark, officeTheme, expected) => {
    expect(themed(isSystemDark, officeTheme).theme).toBe(expected);
  });

  test("is looked up again when the pane is shown, and told once", () => {
    const { heard, show } = themed(false, { bodyBackgroundColor: "#FFFFFF" });
    Object.assign(globalThis, {
      Office: { context: { officeTheme: { bodyBackgroundColor: "#000000" } } },
    });
    show();
    show();
    expect(heard).toEqual(["dark"]);
  });

  test("follows the system where Excel tells nothing", () => {
    const { heard, system } = themed(false, undefined);
    system.matches = true;
    system.dispatchEvent(new Event("change"));
    expect(heard).toEqual(["dark"]);
  });
});

test.each([
  ["#FFFFFF", false],
  ["#000000", true],
  ["217346", true],
  ["#F3F2F1", false],
  ["white", null],
  [undefined, null],
])("%s is dark: %s", (colour, expected) => {
  expect(isDarkColour(colour)).toBe(expected);
});
