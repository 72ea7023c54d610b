/**
 * What Excel insists on in a file, as far as it can be told without Excel: it offers to repair a file
 * that breaks one of these. (ECMA-376 parts 1 and 2; order of elements from the schemas, from memory.)
 */
import { strFromU8, unzipSync } from "fflate";
import { columnIndex } from "../../../src/core/base/cell";

const worksheetOrder =
  `sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges
  scenarios autoFilter sortState dataConsolidate customSheetViews mergeCells phoneticPr
  conditionalFormatting dataValidations hyperlinks printOptions pageMargins pageSetup headerFooter
  rowBreaks colBreaks customProperties cellWatches ignoredErrors smartTags drawing legacyDrawing
  legacyDrawingHF drawingHF picture oleObjects controls webPublishItems tableParts extLst`.split(
    /\s+/,
  );

const workbookOrder =
  `fileVersion fileSharing workbookPr AlternateContent revisionPtr workbookProtection bookViews sheets
  functionGroups externalReferences definedNames calcPr oleSize customWorkbookViews pivotCaches
  smartTagPr smartTagTypes webPublishing fileRecoveryPr webPublishObjects extLst`.split(/\s+/);

const stylesOrder =
  "numFmts fonts fills borders cellStyleXfs cellXfs cellStyles dxfs tableStyles colors extLst".split(
    " ",
  );

/** Every law that the file breaks, in words; none for a sound file. */
export function brokenLaws(bytes: Uint8Array): string[] {
  const files = unzipSync(bytes);
  const texts = new Map(
    Object.entries(files)
      .filter(([path]) => /\.(?:xml|rels|vml)$/.test(path))
      .map(([path, part]) => [path, strFromU8(part)]),
  );
  return [
    ...contentTypes(files, texts),
    ...relationships(files, texts),
    ...workbook(texts),
    ...sheets(texts),
    ...styles(texts),
    ...tables(texts),
  ];
}

type Texts = ReadonlyMap<string, string>;

const all = (text: string, pattern: RegExp): string[] =>
  [...text.matchAll(pattern)].map((found) => found[1] ?? found[0]);

const twice = (values: readonly string[]): string[] =>
  values.filter((value, index) => values.indexOf(value) !== index);

function contentTypes(files: Record<string, Uint8Array>, texts: Texts): string[] {
  const list = texts.get("[Content_Types].xml") ?? "";
  const overrides = all(list, /PartName="\/([^"]*)"/g);
  const defaults = all(list, /Extension="([^"]*)"/g).map((ending) => ending.toLowerCase());
  return [
    ...twice([...overrides, ...defaults]).map((path) => `two content types for ${path}`),
    ...overrides
      .filter((path) => !(path in files))
      .map((path) => `content type of no part: ${path}`),
    ...Object.keys(files)
      .filter((path) => path !== "[Content_Types].xml" && !overrides.includes(path))
      .filter((path) => !defaults.includes(path.split(".").at(-1)?.toLowerCase() ?? ""))
      .map((path) => `no content type for ${path}`),
  ];
}

function relationships(files: Record<string, Uint8Array>, texts: Texts): string[] {
  return [...texts].flatMap(([path, text]) => {
    if (!path.endsWith(".rels")) return [];
    const owner = path.replace("_rels/", "").replace(/\.rels$/, "");
    const folder = owner.slice(0, owner.lastIndexOf("/") + 1);
    const rows = all(text, /(<Relationship\s[^>]*>)/g);
    const ids = rows.map((row) => /\sId="([^"]*)"/.exec(row)?.[1] ?? "");
    const targets = rows
      .filter((row) => !row.includes(`TargetMode="External"`))
      .map((row) => /Target="([^"]*)"/.exec(row)?.[1] ?? "")
      .map((target) => new URL(target, `file:///${folder}`).pathname.slice(1));
    const used = all(texts.get(owner) ?? "", /\sr:(?:id|embed|link|pict)="([^"]*)"/g);
    return [
      ...(owner === "" || owner in files ? [] : [`relationships of no part: ${path}`]),
      ...twice(ids).map((id) => `${path} has ${id} twice`),
      ...targets.filter((target) => !(target in files)).map((to) => `${path} leads nowhere: ${to}`),
      ...used.filter((id) => !ids.includes(id)).map((id) => `${owner} uses unknown ${id}`),
    ];
  });
}

/** The names of the elements right below the root, in order. */
function topElements(text: string): string[] {
  const names: string[] = [];
  let depth = 0;
  for (const [tag, slash, name = "", empty] of text.matchAll(/<(\/?)([\w.:-]+)[^>]*?(\/?)>/g)) {
    if (tag.startsWith("<?")) continue;
    if (slash === "/") depth -= 1;
    else {
      if (depth === 1) names.push(name.replace(/^.*:/, ""));
      if (empty !== "/") depth += 1;
    }
  }
  return names;
}

function outOfOrder(path: string, text: string, order: readonly string[]): string[] {
  const places = topElements(text).map((name) => order.indexOf(name));
  return places.some((place, index) => place < (places[index - 1] ?? 0) || place < 0)
    ? [`${path} has its elements in the wrong order: ${topElements(text).join(" ")}`]
    : [];
}

function workbook(texts: Texts): string[] {
  const text = texts.get("xl/workbook.xml") ?? "";
  const sheetTags = all(text, /(<sheet\s[^>]*>)/g);
  const names = sheetTags.map((tag) => (/name="([^"]*)"/.exec(tag)?.[1] ?? "").toLowerCase());
  const sheetIds = sheetTags.map((tag) => /sheetId="([^"]*)"/.exec(tag)?.[1] ?? "");
  const defined = all(text, /(<definedName\s[^>]*>)/g).map((tag) =>
    [/\sname="([^"]*)"/, /localSheetId="([^"]*)"/]
      .map((pattern) => pattern.exec(tag)?.[1]?.toLowerCase() ?? "")
      .join(" of sheet "),
  );
  const positions = all(text, /(?:localSheetId|activeTab|firstSheet)="([^"]*)"/g).map(Number);
  return [
    ...outOfOrder("xl/workbook.xml", text, workbookOrder),
    ...(sheetTags.length === 0 ? ["there is no sheet"] : []),
    ...twice(names).map((name) => `two sheets are called ${name}`),
    ...twice(sheetIds).map((id) => `two sheets have the number ${id}`),
    ...twice(defined).map((name) => `two names ${name}`),
    ...positions.filter((at) => at >= sheetTags.length).map((at) => `there is no sheet at ${at}`),
    ...(text.includes("<definedNames></definedNames>") ? ["an empty list of names"] : []),
    ...(text.includes("calcChain") ? ["a chain of calculation that may not fit"] : []),
  ];
}

function sheets(texts: Texts): string[] {
  const styleCount = all(
    /<cellXfs[\s\S]*<\/cellXfs>/.exec(texts.get("xl/styles.xml") ?? "")?.[0] ?? "",
    /<xf\s/g,
  ).length;
  const shown = [...texts].filter(([, text]) =>
    /<sheetView\s[^>]*tabSelected="(1|true)"/.test(text),
  );
  const found = [...texts].flatMap(([path, text]) => {
    if (!path.startsWith("xl/worksheets/") || path.endsWith(".rels")) return [];
    const rows = all(text, /<row\s[^>]*?r="(\d+)"/g).map(Number);
    const cellRows = all(text, /<row\s([\s\S]*?)(?:<\/row>|\/>)/g).map((row) =>
      all(row, /<c\s[^>]*?r="([A-Z]+\d+)"/g).map(
        (cell) => columnIndex(cell.replace(/\d/g, "")) + 1,
      ),
    );
    const rises = (values: readonly number[]): boolean =>
      values.every((value, index) => value > (values[index - 1] ?? 0));
    const numbers = all(text, /<c(?=\s)[^>]*?\ss="(\d+)"/g).map(Number);
    const counted = [
      ...text.matchAll(
        /<(mergeCells|dataValidations|tableParts|rowBreaks) count="(\d+)"[^>]*>([\s\S]*?)<\/\1>/g,
      ),
    ];
    return [
      ...outOfOrder(path, text, worksheetOrder),
      ...(rises(rows) ? [] : [`${path}: rows out of order`]),
      ...(cellRows.every(rises) ? [] : [`${path}: cells out of order`]),
      ...numbers.filter((at) => at >= styleCount).map((at) => `${path}: no style ${at}`),
      ...counted
        .filter(
          ([, , count, inside = ""]) => topElements(`<x>${inside}</x>`).length !== Number(count),
        )
        .map(([, name]) => `${path}: wrong count of ${name ?? ""}`),
      ...all(text, /<f>([^<]*)<\/f>/g).filter((formula) => formula.startsWith("=")),
      ...all(text, /<formula1>([^<]*)<\/formula1>/g).filter(
        (list) => list.replaceAll("&quot;", '"').replaceAll("&amp;", "&").length > 257,
      ),
    ];
  });
  return [...found, ...(shown.length > 1 ? ["two sheets are shown at once"] : [])];
}

function styles(texts: Texts): string[] {
  const text = texts.get("xl/styles.xml") ?? "";
  const lists = ["numFmts", "fonts", "fills", "borders", "cellXfs"];
  return [
    ...outOfOrder("xl/styles.xml", text, stylesOrder),
    ...lists.flatMap((name) => {
      const [whole, count] =
        new RegExp(`<${name} [^>]*?count="(\\d+)"[^>]*>[\\s\\S]*?</${name}>`).exec(text) ?? [];
      if (whole === undefined) return [];
      return topElements(whole).length === Number(count) ? [] : [`wrong count of ${name}`];
    }),
  ];
}

function tables(texts: Texts): string[] {
  const found = [...texts].filter(([path]) => path.startsWith("xl/tables/"));
  const of = (pattern: RegExp): string[] =>
    found.map(([, text]) => (pattern.exec(text)?.[1] ?? "").toLowerCase());
  const names = all(texts.get("xl/workbook.xml") ?? "", /(<definedName\s[^>]*>)/g)
    .filter((tag) => !tag.includes("localSheetId"))
    .map((tag) => /\sname="([^"]*)"/.exec(tag)?.[1] ?? "");
  return [
    ...twice(of(/<table\s[^>]*?\sid="([^"]*)"/)).map((id) => `two tables have the number ${id}`),
    ...twice([...of(/displayName="([^"]*)"/), ...names.map((name) => name.toLowerCase())]).map(
      (name) => `two things are called ${name}`,
    ),
    ...found.flatMap(([path, text]) => {
      const columns = all(text, /<tableColumn\s[^>]*?name="([^"]*)"/g);
      const [from = "", to = ""] = (/<table\s[^>]*?\sref="([^"]*)"/.exec(text)?.[1] ?? "").split(
        ":",
      );
      const letters = (cell: string): number => columnIndex(cell.replace(/\d/g, ""));
      return [
        ...twice(columns.map((name) => name.toLowerCase())).map((name) => `${path}: ${name} twice`),
        ...(columns.length === letters(to) - letters(from) + 1 ? [] : [`${path}: wrong columns`]),
      ];
    }),
  ];
}
