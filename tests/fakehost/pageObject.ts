/** Page set-up of the fake host. */
import type { FakeSheet } from "./book";
import { hostObject, plainProperties, recordOf, refuse, type HostObject } from "./hostObject";
import { rangeArgument } from "./rangeObject";
import type { World } from "./world";

export function pageLayoutObject({ book }: World, sheet: FakeSheet): HostObject {
  const printer = (): void => {
    if (!book.hasPrinter) refuse("GeneralException", "An internal error has occurred.");
    if (sheet.isProtected) refuse("AccessDenied", "You cannot perform the requested operation.");
  };
  const page = plainProperties(
    sheet.page,
    ["orientation", "zoom", "paperSize", "leftMargin", "rightMargin", "topMargin", "bottomMargin"],
    (name, value) => {
      printer();
      if (name === "zoom") recordOf(value);
    },
  );
  const places = ["left", "center", "right"].flatMap((side) => [`${side}Header`, `${side}Footer`]);
  return hostObject({
    kind: "pageLayout",
    ...page,
    link: {
      headersFooters: () =>
        hostObject({
          kind: "headersFooters",
          link: {
            defaultForAllPages: () =>
              hostObject({
                kind: "headerFooter",
                ...plainProperties(sheet.headers, places, printer),
              }),
          },
        }),
    },
    call: {
      setPrintArea: (area) => {
        printer();
        sheet.printArea = rangeArgument(sheet, area).area;
      },
      setPrintTitleRows: (rows) => {
        printer();
        sheet.titleRows = rows === "" ? null : rangeArgument(sheet, rows).area;
      },
    },
  });
}

export function breaksObject(sheet: FakeSheet): HostObject {
  return hostObject({
    kind: "breaks",
    items: () => sheet.breaks.map((row) => hostObject({ kind: "break", id: String(row) })),
    call: {
      getCount: () => sheet.breaks.length,
      add: (at) => {
        const { row } = rangeArgument(sheet, at).area;
        sheet.breaks = [...sheet.breaks, row];
        return hostObject({ kind: "break", id: String(row) });
      },
      removePageBreaks: () => void (sheet.breaks = []),
    },
  });
}
