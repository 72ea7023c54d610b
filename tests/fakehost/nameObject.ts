/** Defined names of the fake host, of the workbook's scope or a sheet's. */
import { sheetReference } from "../../src/core/base/cell";
import { areaAddress, type Area } from "./areas";
import { checkFormula, type FakeName, type FakeSheet } from "./book";
import {
  badArgument,
  hostObject,
  isHostObject,
  nothing,
  notThere,
  refuse,
  textOf,
  type HostObject,
} from "./hostObject";
import { placeOf, rangeObject } from "./rangeObject";
import { referenceArea, tokens } from "./formulaText";
import { sheetObject } from "./sheetObject";
import type { World } from "./world";

export function namesObject(world: World, sheet: FakeSheet | null): HostObject {
  const { book } = world;
  const own = (): FakeName[] => book.names.filter((name) => name.sheet === sheet);
  const find = (name: string): FakeName | undefined =>
    own().find((each) => each.name.toLowerCase() === name.toLowerCase());
  return hostObject({
    kind: "names",
    items: () => own().map((name) => nameObject(world, name)),
    call: {
      getCount: () => own().length,
      getItem: (key) => {
        const name = find(textOf(key));
        return name === undefined ? notThere() : nameObject(world, name);
      },
      add: (given, reference, comment) => {
        const text = textOf(given);
        if (!/^[\p{L}_\\][\p{L}\p{N}_.\\]*$/u.test(text) || /^[a-z]{1,3}\d+$/i.test(text)) {
          badArgument();
        }
        if (find(text) !== undefined) {
          refuse("ItemAlreadyExists", "A resource with the same name already exists.");
        }
        const formula = isHostObject(reference)
          ? `=${fixed(placeOf(reference))}`
          : textOf(reference);
        checkFormula(book, formula);
        const name: FakeName = {
          name: text,
          formula: formula.startsWith("=") ? formula : `=${formula}`,
          visible: true,
          comment: typeof comment === "string" ? comment : "",
          sheet,
        };
        book.names.push(name);
        return nameObject(world, name);
      },
    },
  });
}

const fixed = ({ sheet, area }: { sheet: FakeSheet; area: Area }): string =>
  `${sheetReference(sheet.name)}!${areaAddress(area).replace(/[A-Z]+|\d+/g, "$$$&")}`;

function nameObject(world: World, name: FakeName): HostObject {
  const { book } = world;
  const range = (): HostObject | null => {
    const [token, ...more] = tokens(name.formula.slice(1));
    if (token?.kind !== "reference" || more.length > 0) return null;
    const area = referenceArea(token.reference);
    const sheet = book.sheets.find((each) => each.name === token.reference.sheet) ?? name.sheet;
    return area === null || sheet === null ? null : rangeObject(world, sheet, area);
  };
  return hostObject({
    kind: "name",
    id: name.name,
    get: {
      name: () => name.name,
      formula: () => name.formula,
      visible: () => name.visible,
      comment: () => name.comment,
      scope: () => (name.sheet === null ? "Workbook" : "Worksheet"),
    },
    set: {
      formula: (value) => {
        checkFormula(book, textOf(value));
        name.formula = textOf(value);
      },
      visible: (value) => (name.visible = value === true),
      comment: (value) => (name.comment = textOf(value)),
    },
    link: {
      worksheet: () => (name.sheet === null ? notThere() : sheetObject(world, name.sheet)),
    },
    call: {
      delete: () => void (book.names = book.names.filter((each) => each !== name)),
      getRange: () => range() ?? notThere(),
      getRangeOrNullObject: () => range() ?? nothing,
    },
  });
}
