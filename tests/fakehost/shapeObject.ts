/** What is drawn on a sheet of the fake host: images that are added, and whatever else stands there. */
import { nextId, type FakeShape, type FakeSheet } from "./book";
import {
  badArgument,
  denied,
  hostObject,
  notThere,
  plainProperties,
  refuse,
  textOf,
  type HostObject,
} from "./hostObject";
import type { World } from "./world";

const texts = ["altTextTitle", "altTextDescription", "placement"];
const switches = ["visible", "lockAspectRatio"];
const places = ["left", "top"];
const sizes = ["width", "height"];

export function shapesObject({ book }: World, sheet: FakeSheet): HostObject {
  const open = (): void => {
    if (sheet.isProtected) denied();
  };
  const shape = (one: FakeShape): HostObject => {
    const looks = plainProperties(
      one.looks,
      [...texts, ...switches, ...places, ...sizes],
      (name, value) => {
        open();
        if (!sheet.shapes.includes(one)) notThere();
        checkLook(name, value);
        keepRatio(one.looks, name, value);
      },
    );
    return hostObject({
      kind: "shape",
      id: one.id,
      get: {
        ...looks.get,
        id: () => one.id,
        name: () => one.name,
        type: () => (one.image === null ? "Group" : "Image"),
      },
      set: {
        ...looks.set,
        name: (value) => {
          open();
          one.name = textOf(value);
        },
      },
      call: {
        delete: () => {
          open();
          if (!sheet.shapes.includes(one)) notThere();
          sheet.shapes = sheet.shapes.filter((each) => each !== one);
        },
      },
    });
  };
  const found = (key: unknown): HostObject => {
    const known = sheet.shapes.find(({ id, name }) => id === key || name === key);
    return known === undefined ? notThere() : shape(known);
  };
  return hostObject({
    kind: "shapes",
    items: () => sheet.shapes.map(shape),
    call: {
      getItem: found,
      getCount: () => sheet.shapes.length,
      addImage: (image) => {
        open();
        if (!book.takesImages) refuse("GeneralException", "No images here.");
        if (!/^[A-Za-z0-9+/]+=*$/.test(textOf(image))) badArgument();
        const id = nextId(book, "P");
        const looks = { visible: true, lockAspectRatio: true, left: 0, top: 0, ...naturalSize };
        const added = {
          id,
          name: `Picture ${sheet.shapes.length + 1}`,
          image: String(image),
          looks,
        };
        sheet.shapes.push(added);
        return shape(added);
      },
    },
  });
}

/** Every image is as large as this until it is told otherwise. */
const naturalSize = { width: 120, height: 60 };

function checkLook(name: string, value: unknown): void {
  if (texts.includes(name)) textOf(value);
  else if (switches.includes(name)) {
    if (typeof value !== "boolean") badArgument();
  } else {
    const least = sizes.includes(name) ? Number.MIN_VALUE : 0;
    if (typeof value !== "number" || !(value >= least)) badArgument();
  }
}

/** While the ratio is locked, the other side follows. */
function keepRatio(looks: Record<string, unknown>, name: string, value: unknown): void {
  const other = name === "width" ? "height" : name === "height" ? "width" : null;
  if (other === null || looks["lockAspectRatio"] !== true) return;
  looks[other] = (Number(looks[other]) * Number(value)) / Number(looks[name]);
}
