import { describe, expect, test } from "@jest/globals";
import { hostFault } from "../../src/pane/state/hostFault";
import { thrownFault } from "../../src/workbook/thrownFault";

describe("what a spreadsheet threw", () => {
  test("is told as it is where it is a fault of the port", () => {
    const fault = { code: "workbook-closed", message: "The workbook is closed." } as const;
    expect(hostFault(thrownFault(fault))).toEqual(fault);
  });

  test("is told with what to do where it is something else", () => {
    const fault = hostFault(new Error("no memory"));
    expect(fault?.message).toMatch(/^The spreadsheet did not answer\. Try again\..*no memory$/);
  });

  test("is no fault of the spreadsheet where it is one of this program", () => {
    expect(hostFault(new TypeError("x is not a function"))).toBeNull();
  });
});
