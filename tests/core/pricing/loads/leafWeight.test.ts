import { describe, expect, test } from "@jest/globals";
import { inches, pieces, pounds } from "../../../../src/core/base/units";
import { panelParts, weighParts } from "../../../../src/core/pricing/loads/leafWeight";
import { shipmentWeight } from "../../../../src/core/pricing/shipment";

describe("the weight of a leaf", () => {
  test("adds up its parts and says how each was found", () => {
    const weighed = weighParts([
      { name: "frame", count: 2, kind: "perFoot", poundsPerFoot: 1.5, length: inches(264) },
      {
        name: "mesh",
        count: 2,
        kind: "perSquareFoot",
        poundsPerSquareFoot: 0.736,
        width: inches(48),
        height: inches(84),
      },
      { name: "trolley", count: 2, kind: "each", poundsEach: 3.25 },
    ]);
    expect(weighed.parts.map(({ because }) => because)).toEqual([
      "2 x 264 in at 1.5 lb per ft = 66 lb",
      "2 x 48 in x 84 in at 0.736 lb per sq ft = 41.2 lb",
      "2 x 3.25 lb each = 6.5 lb",
    ]);
    expect(weighed.weight).toBeCloseTo(66 + 2 * 28 * 0.736 + 6.5, 9);
    expect(weighed.notWeighed).toEqual([]);
  });

  test("names what has no weight instead of taking it as nothing", () => {
    const weighed = weighParts([
      { name: "lock", count: 1, kind: "each", poundsEach: null },
      { name: "plate", count: 3, kind: "each", poundsEach: 2 },
    ]);
    expect(weighed).toMatchObject({ weight: 6, notWeighed: ["lock"] });
    expect(weighed.parts[0]).toEqual({
      name: "lock",
      weight: null,
      because: "no weight is given",
    });
  });

  test("of a panel is its mesh and the section around it", () => {
    const mesh = { opening: inches(1.5), wire: inches(0.135) };
    const frame = { kind: "area", squareInches: 0.3 } as const;
    const parts = panelParts("panel", 2, inches(48), inches(84), mesh, frame);
    expect(weighParts(parts).parts.map(({ because }) => because)).toEqual([
      "2 x 48 in x 84 in of mesh at 0.736 lb per sq ft = 41.2 lb",
      "2 x 264 in at 1.021 lb per ft = 44.9 lb",
    ]);
  });
});

describe("the weight of a shipment", () => {
  const rule = { carries: pounds(1000), own: pounds(45), least: pieces(1) };
  const goods = (weight: number | null) => ({
    name: "goods",
    weight: weight === null ? null : pounds(weight),
  });

  test.each([
    ["nothing", 0, 0, 0],
    ["a little", 10, 1, 55],
    ["a full pallet", 1000, 1, 1045],
    ["a little more than a pallet", 1000.1, 2, 1090.1],
    ["three pallets", 2500, 3, 2635],
  ])("%s", (_what, weight, pallets, together) => {
    const shipment = shipmentWeight([goods(weight)], rule);
    expect(shipment.pallets).toBe(pallets);
    expect(shipment.weight).toBeCloseTo(together, 9);
  });

  test("does not ask for a pallet for what doubles lose: ten times 0.1 of 1 lb", () => {
    const tenths = Array.from({ length: 10 }, () => goods(0.1));
    const small = { ...rule, carries: pounds(0.3 + 0.7) };
    expect(shipmentWeight([...tenths], small).pallets).toBe(1);
    expect(
      shipmentWeight([goods(0.1), goods(0.2)], { ...rule, carries: pounds(0.3) }).pallets,
    ).toBe(1);
  });

  test("ships loose without a rule, and says so", () => {
    expect(shipmentWeight([goods(80)], null)).toMatchObject({
      weight: 80,
      pallets: 0,
      because: "80 lb of goods, no pallets",
    });
  });

  test("explains itself and names what is not weighed", () => {
    const lines = [goods(1500), { name: "GUIDE", weight: null }];
    const shipment = shipmentWeight(lines, rule);
    expect(shipmentWeight(lines, rule, "metric").because).toBe(
      "680.4 kg of goods at 453.6 kg a pallet: 2 x 20.4 kg = 40.8 kg, together 721.2 kg",
    );
    expect(shipment.because).toBe(
      "1,500 lb of goods at 1,000 lb a pallet: 2 x 45 lb = 90 lb, together 1,590 lb",
    );
    expect(shipment.notWeighed).toEqual(["GUIDE"]);
  });
});
