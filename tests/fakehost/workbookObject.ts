/** The root of the fake host: the workbook, its application, its protection and its custom parts. */
import { nextId, type FakePart } from "./book";
import {
  badArgument,
  hostObject,
  nothing,
  noWorksheet,
  notThere,
  refuse,
  textOf,
  type HostObject,
} from "./hostObject";
import { namesObject } from "./nameObject";
import { areasObject, rangeObject } from "./rangeObject";
import { sheetsObject } from "./sheetObject";
import { tablesObject } from "./tableObject";
import type { World } from "./world";

export function workbookObject(world: World): HostObject {
  const { book } = world;
  const quiet = (): null => null;
  return hostObject({
    kind: "workbook",
    get: { name: () => book.name, readOnly: () => false },
    link: {
      worksheets: () => sheetsObject(world),
      tables: () => tablesObject(world, null),
      names: () => namesObject(world, null),
      customXmlParts: () => partsObject(world),
      protection: () =>
        hostObject({ kind: "protection", get: { protected: () => book.structureProtected } }),
      application: () =>
        hostObject({
          kind: "application",
          get: { calculationMode: () => "Automatic" },
          call: {
            suspendApiCalculationUntilNextSync: quiet,
            suspendScreenUpdatingUntilNextSync: quiet,
            calculate: () => {
              world.calculations++;
            },
          },
        }),
    },
    call: {
      getSelectedRange: () => {
        const [area, ...more] = book.selection;
        if (area === undefined || more.length > 0) {
          return refuse("InvalidSelection", "The selection is no single range.");
        }
        return rangeObject(world, book.active, area);
      },
      getSelectedRanges: () => {
        if (book.chartInFront) noWorksheet();
        return book.selection.length === 0
          ? refuse("InvalidSelection", "Nothing that has cells is selected.")
          : areasObject(world, book.active, book.selection);
      },
    },
  });
}

/** Custom parts are told apart by the namespace of their root. */
function partsObject(world: World): HostObject {
  const { book } = world;
  const scoped = (namespace: string): FakePart[] =>
    book.parts.filter((part) => namespaceOf(part.xml) === namespace);
  const collection = (parts: () => readonly FakePart[]): HostObject["call"] & object => ({
    getCount: () => parts().length,
    getItem: (id) => {
      const part = parts().find((each) => each.id === id);
      return part === undefined ? notThere() : partObject(world, part);
    },
    getOnlyItem: () => {
      const [part, ...more] = parts();
      return part === undefined || more.length > 0 ? notThere() : partObject(world, part);
    },
    getOnlyItemOrNullObject: () => {
      const [part, ...more] = parts();
      return part === undefined || more.length > 0 ? nothing : partObject(world, part);
    },
  });
  const all = (): FakePart[] => book.parts;
  return hostObject({
    kind: "customXmlParts",
    items: () => all().map((part) => partObject(world, part)),
    call: {
      ...collection(all),
      add: (xml) => {
        const part = { id: nextId(book, "P"), xml: checkedXml(xml) };
        book.parts.push(part);
        return partObject(world, part);
      },
      getByNamespace: (namespace) => {
        const parts = (): FakePart[] => scoped(textOf(namespace));
        return hostObject({
          kind: "scopedParts",
          items: () => parts().map((part) => partObject(world, part)),
          call: collection(parts),
        });
      },
    },
  });
}

function partObject({ book }: World, part: FakePart): HostObject {
  return hostObject({
    kind: "customXmlPart",
    id: part.id,
    get: { id: () => part.id, namespaceUri: () => namespaceOf(part.xml) },
    call: {
      getXml: () => part.xml,
      setXml: (xml) => void (part.xml = checkedXml(xml)),
      delete: () => void (book.parts = book.parts.filter((each) => each !== part)),
    },
  });
}

const namespaceOf = (xml: string): string => /<[^?!][^>]*?\sxmlns="([^"]*)"/.exec(xml)?.[1] ?? "";

/**
 * Well-formed enough: one root without a declaration before it, no raw control characters. (API
 * reference of `Excel.CustomXmlPartCollection`, `add`: a valid XML fragment.)
 */
function checkedXml(given: unknown): string {
  const xml = textOf(given);
  const root = /^<([\w:]+)[\s>/]/.exec(xml)?.[1];
  const closed = root !== undefined && (xml.endsWith(`</${root}>`) || xml.endsWith("/>"));
  // eslint-disable-next-line no-control-regex -- these are what XML forbids
  return closed && !/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/.test(xml) ? xml : badArgument();
}
