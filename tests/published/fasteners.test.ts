/** The fasteners of the starter kit book against published standards for fasteners. */
import { describe, expect, test } from "@jest/globals";
import { cellText } from "../../src/core/base/cell";
import { starterItems } from "../../src/core/kitbook/starter/items";
import { starterKitBook } from "../../src/core/kitbook/starter/starterKitBook";
import { fastenerSizes, type FastenerSize } from "../../src/core/fasteners/fastenerSizes";

const item = (code: string) => {
  const found = starterItems.find((row) => row.code.value === code);
  if (found === undefined) throw new Error(`No starter item ${code}`);
  return found;
};
const codes = starterItems.map(({ code }) => cellText(code.value));
const fastenerCodes = codes.filter((code) => /^(CB|HB|HN|FN|FW|LW) /.test(code));

/** `CB 1/4 x 1-1/4` is of kind `CB`, nominal size `1/4` and length `1-1/4`. */
function parts(code: string) {
  const [, kind = "", nominal = "", length] = /^([A-Z]+) (\S+)(?: x (\S+))?$/.exec(code) ?? [];
  return { kind, nominal, length, size: sizeOf(nominal) };
}

function sizeOf(nominal: string): FastenerSize {
  const size = fastenerSizes.find((known) => known.nominal === nominal);
  if (size === undefined) throw new Error(`No dimensions for ${nominal}`);
  return size;
}

// Names and the order of a designation: ASME B18.5 (round head square neck bolts), B18.2.1 (hex
// bolts), B18.2.2 (hex and hex flange nuts), B18.21.1 (plain and helical spring lock washers); the
// very wording of the designations is from memory, and the everyday name stands before it. Threads: ASME B1.1, coarse series.
describe("the description of", () => {
  const designations: Readonly<Record<string, (size: FastenerSize, length: string) => string>> = {
    CB: ({ nominal, threads }, length) =>
      `Carriage bolt (round head square neck), ${nominal}-${threads} x ${length} in, `,
    HB: ({ nominal, threads }, length) =>
      `Hex bolt (hex cap screw), ${nominal}-${threads} x ${length} in, `,
    HN: ({ nominal, threads }) => `Hex nut, ${nominal}-${threads}, `,
    FN: ({ nominal, threads }) => `Flange nut (hex flange), ${nominal}-${threads}, `,
    FW: ({ nominal }) => `Flat washer (plain, type B regular), ${nominal} in, `,
    LW: ({ nominal }) => `Lock washer (helical spring, regular), ${nominal} in, `,
  };

  test.each(fastenerCodes)("%s names it as its standard does, with its threads", (code) => {
    const { kind, size, length = "" } = parts(code);
    const wanted = `${designations[kind]?.(size, length) ?? ""}steel, zinc plated`;
    expect(item(code).description.value).toBe(wanted);
  });
});

/** Steel, 7850 kg/m3 in pounds per cubic inch. Source: 1 in and 1 lb exactly as NIST SP 811 has them. */
const steel = (7850 * 0.0254 ** 3) / 0.45359237;

describe("published dimensions", () => {
  // The values as the standards print them, most before least. ASME B18.5; B18.2.1 and B18.2.2 basic;
  // B18.2.2; washers B18.21.1, plain ones from memory.
  test.each([
    ["1/4", [0.594, 0.563, 0.145, 0.125, 0.26, 0.245, 0.156, 0.125], [7 / 16, 11 / 64], 7 / 32],
    ["5/16", [0.719, 0.688, 0.176, 0.156, 0.324, 0.307, 0.187, 0.156], [1 / 2, 7 / 32], 17 / 64],
    ["1/2", [1.094, 1.032, 0.27, 0.25, 0.515, 0.492, 0.281, 0.25], [3 / 4, 11 / 32], 7 / 16],
  ])("of %s are those of the data", (nominal, carriage, hex, nut) => {
    const { carriageHead, carriageNeck, hexHead, nut: known } = sizeOf(nominal);
    const { diameter, height } = carriageHead;
    const { square, depth } = carriageNeck;
    expect([diameter, height, square, depth].flatMap(({ most, least }) => [most, least])).toEqual(
      carriage,
    );
    expect([hexHead.acrossFlats, hexHead.height]).toEqual(hex);
    expect(known.thickness.least).toBeLessThan(nut);
    expect(known.thickness.most).toBeGreaterThan(nut);
  });

  // ASME B1.1: 0.7854 (D - 0.9743 / n)^2.
  test.each(fastenerSizes.map((size) => [size.nominal, size] as const))(
    "of %s give the tensile stress area that is published",
    (_nominal, { diameter, threads, stressArea }) => {
      expect(0.7854 * (diameter - 0.9743 / threads) ** 2).toBeCloseTo(stressArea, 4);
    },
  );

  // ASME B18.5 against B18.21.1 (washers from memory).
  test.each(fastenerSizes.map((size) => [size.nominal, size] as const))(
    "of %s fit together: neck under head, washer over bolt and under nut",
    (_nominal, { diameter, carriageHead, carriageNeck, washer, nut, hexHead, lockWasher }) => {
      expect(carriageHead.diameter.least).toBeGreaterThan(carriageNeck.square.most * Math.SQRT2);
      expect(carriageNeck.square.most).toBeGreaterThan(diameter);
      expect(washer.inside).toBeGreaterThan(diameter);
      expect(washer.outside).toBeGreaterThan(nut.acrossFlats);
      expect(hexHead.acrossFlats).toBe(nut.acrossFlats);
      expect(diameter + 2 * lockWasher.width).toBeLessThan(washer.outside);
    },
  );
});

describe("the starter's connections", () => {
  const rows = starterKitBook.parts.map((part) => ({
    where: [part.type, part.bag, part.step, part.when].map(({ value }) => cellText(value)).join(),
    quantity: cellText(part.quantity.value),
    code: cellText(part.item.value),
  }));
  const connections = rows.flatMap((row, index) => {
    if (!/^[CH]B /.test(row.code)) return [];
    const after = rows.slice(index + 1);
    const end = after.findIndex(({ code }) => !/^(FW|LW|HN|FN) /.test(code));
    return [[row, ...after.slice(0, end < 0 ? after.length : end)]];
  });

  test("are many, and each has one nut, last", () => {
    expect(connections.length).toBeGreaterThan(25);
    for (const connection of connections) {
      const isNut = connection.map(({ code }) => /^(HN|FN) /.test(code));
      expect(isNut.filter(Boolean)).toHaveLength(1);
      expect(isNut.at(-1)).toBe(true);
    }
  });

  // ASME B18.2.2: a nut of one nominal size goes on a bolt of that size.
  test("have bolt, washers and nut of one size, as many of each, in one bag", () => {
    for (const connection of connections) {
      const sizes = new Set(connection.map(({ code }) => parts(code).nominal));
      expect([...sizes]).toHaveLength(1);
      expect(new Set(connection.map(({ quantity }) => quantity)).size).toBe(1);
      expect(new Set(connection.map(({ where }) => where)).size).toBe(1);
    }
  });

  // ASME B18.5, B18.2.2, B18.21.1: a bolt at least holds its nut, its washers and the neck.
  test("have bolts longer than what stands on them", () => {
    for (const [bolt, ...others] of connections) {
      const { kind, size, length = "" } = parts(bolt?.code ?? "");
      const stack = others.reduce((sum, { code }) => {
        const thickness = { HN: size.nut, FN: size.nut, FW: size.washer, LW: size.lockWasher };
        return sum + leastOf(thickness[parts(code).kind as keyof typeof thickness].thickness);
      }, 0);
      const under = kind === "CB" ? size.carriageNeck.depth.least : 0;
      expect(inches(length)).toBeGreaterThan(stack + under);
    }
  });
});

const leastOf = (thickness: number | { readonly least: number }): number =>
  typeof thickness === "number" ? thickness : thickness.least;

/** `1-1/4` is 1.25. */
function inches(text: string): number {
  const [, whole = "0", top = "0", bottom = "1"] =
    /^(?:(\d+)-?)??(?:(\d+)\/(\d+))?$/.exec(text) ?? [];
  return Number(whole) + Number(top) / Number(bottom);
}

// Weights of the starter are invented; those that dimensions give are near to them. ASME B18.2.2 and
// B18.21.1 (washers from memory).
describe("invented weights", () => {
  const hex = (acrossFlats: number) => (Math.sqrt(3) / 2) * acrossFlats ** 2;
  const round = (diameter: number) => (Math.PI / 4) * diameter ** 2;
  const middle = ({ least, most }: { least: number; most: number }) => (least + most) / 2;

  test.each(fastenerCodes.filter((code) => /^(HN|FW) /.test(code)))(
    "of %s are within a fifth of its volume in steel",
    (code) => {
      const { kind, size } = parts(code);
      const { nut, washer, diameter } = size;
      const volume =
        kind === "HN"
          ? (hex(nut.acrossFlats) - round(diameter)) * middle(nut.thickness)
          : (round(washer.outside) - round(washer.inside)) * middle(washer.thickness);
      const ratio = Number(item(code).weight.value) / (volume * steel);
      expect(ratio).toBeGreaterThan(0.8);
      expect(ratio).toBeLessThan(1.2);
    },
  );
});
