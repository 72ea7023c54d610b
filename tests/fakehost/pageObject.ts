/** Page set-up of the fake host. */
import type { FakeSheet } from "./book";
import {
  badArgument,
  hostObject,
  plainProperties,
  recordOf,
  refuse,
  textOf,
  type HostObject,
} from "./hostObject";
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
                ...plainProperties(sheet.headers, places, (name, value) => {
                  printer();
                  checkHeader({ ...sheet.headers, [name]: textOf(value) }, name);
                }),
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

/** A header or footer holds 255 characters. (Source: Microsoft's page on Excel specifications.) */
function checkHeader(headers: Readonly<Record<string, unknown>>, name: string): void {
  const kind = name.endsWith("Header") ? "Header" : "Footer";
  const texts = ["left", "center", "right"].map((side) => textOf(headers[`${side}${kind}`] ?? ""));
  const codes = texts.map((text) => (text === "" ? "" : `&L${text}`));
  if (codes.join("").length > 255) badArgument();
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
