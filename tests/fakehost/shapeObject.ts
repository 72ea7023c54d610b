/** What is drawn on a sheet of the fake host, by name. */
import type { FakeSheet } from "./book";
import { denied, hostObject, notThere, type HostObject } from "./hostObject";

export function shapesObject(sheet: FakeSheet): HostObject {
  const shape = ({ id, name }: FakeSheet["shapes"][number]): HostObject =>
    hostObject({
      kind: "shape",
      id,
      get: { id: () => id, name: () => name },
      call: {
        delete: () => {
          if (sheet.isProtected) denied();
          sheet.shapes = sheet.shapes.filter((each) => each.id !== id);
        },
      },
    });
  const found = (key: unknown): HostObject => {
    const known = sheet.shapes.find(({ id, name }) => id === key || name === key);
    return known === undefined ? notThere() : shape(known);
  };
  return hostObject({
    kind: "shapes",
    items: () => sheet.shapes.map(shape),
    call: { getItem: found, getCount: () => sheet.shapes.length },
  });
}
