/** Weights against published formulas, and shapes whose weight can be reckoned by hand. */
import { describe, expect, test } from "@jest/globals";
import { inches } from "../../src/core/base/units";
import {
  meshPerSquareFoot,
  sectionArea,
  sectionPerFoot,
  steelDensity,
} from "../../src/core/pricing/loads/meshWeight";

const mesh = { opening: inches(1.5), wire: inches(0.135) };

describe("woven mesh", () => {
  // ISO 9044, mass per unit area: d^2 rho / (618.1 p), d and p in mm, steel 7850 kg/m3.
  test("weighs 0.736 lb a square foot by ISO 9044 (0.135 in wire, 1.5 in opening)", () => {
    expect(meshPerSquareFoot(mesh)).toBeCloseTo(0.736, 3);
  });

  test("weighs 0.715 lb a square foot without crimp", () => {
    expect(meshPerSquareFoot(mesh, "straight")).toBeCloseTo(0.715, 3);
  });

  test("weighs what its straight wires weigh, laid out one by one", () => {
    // A square foot holds 12 / 1.635 wires of 12 in each way; a wire is a cylinder.
    const cubicInches = 2 * (12 / 1.635) * 12 * ((Math.PI * 0.135 ** 2) / 4);
    const poundsPerCubicInch = (steelDensity * 0.0254 ** 3) / 0.45359237;
    expect(meshPerSquareFoot(mesh, "straight")).toBeCloseTo(cubicInches * poundsPerCubicInch, 9);
  });
});

describe("steel sections", () => {
  test("steel weighs 490 lb a cubic foot", () => {
    // AISC Steel Construction Manual, weights of building materials: steel, 490 lb per cu ft (value from memory).
    const foot = sectionPerFoot({ kind: "area", squareInches: 144 });
    expect(Math.round(foot)).toBe(490);
  });

  test.each([
    // AISC Table 1-7, weight per foot of angles (values from memory); fillets make up the rest.
    { legs: [2, 2], thickness: 0.25, published: 3.19 },
    { legs: [1.5, 1.5], thickness: 0.25, published: 2.34 },
    { legs: [3, 2], thickness: 0.25, published: 4.1 },
  ])("an angle $legs x $thickness weighs $published lb a foot within 2 %", (angle) => {
    const [long = 0, short = 0] = angle.legs;
    const weight = sectionPerFoot({
      kind: "angle",
      legs: [inches(long), inches(short)],
      thickness: inches(angle.thickness),
    });
    expect(Math.abs(weight / angle.published - 1)).toBeLessThan(0.02);
  });

  test.each([
    // ASME B36.10M, plain-end weight per foot of pipe (values from memory).
    { name: "1 in schedule 40", outside: 1.315, thickness: 0.133, published: 1.68 },
    { name: "2 in schedule 40", outside: 2.375, thickness: 0.154, published: 3.66 },
  ])("pipe of $name weighs $published lb a foot", ({ outside, thickness, published }) => {
    const pipe = { kind: "pipe", outside: inches(outside), thickness: inches(thickness) } as const;
    expect(sectionPerFoot(pipe)).toBeCloseTo(published, 2);
  });

  test.each([
    [
      "a channel is a web and two flanges",
      { kind: "channel", web: inches(1.5), flange: inches(0.75), thickness: inches(0.125) },
      0.125 * 1.5 + 2 * 0.125 * (0.75 - 0.125),
    ],
    [
      "a tube is a box less its hollow",
      { kind: "tube", sides: [inches(2), inches(1)], thickness: inches(0.1) },
      2 * 1 - 1.8 * 0.8,
    ],
    ["a bar is solid", { kind: "bar", sides: [inches(1.25), inches(0.25)] }, 0.3125],
  ] as const)("%s", (_what, section, area) => {
    expect(sectionArea(section)).toBeCloseTo(area, 12);
  });
});
