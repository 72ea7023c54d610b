/** A file with no sheet in it yet: the parts that every workbook has. */
import { encode } from "./parts";
import { xmlStart } from "./relationships";

/**
 * Fresh parts each time. Columns are measured in digits of the usual font: those of Arial 9.5 are 7.04
 * pixels wide, which is 7 whether a spreadsheet rounds them to a pixel or not, and fonts of the same
 * widths are to be had everywhere. A label so comes out where it should. At least one sheet must be added
 * before it is a workbook.
 */
export const emptyFile = (): Map<string, Uint8Array> =>
  new Map(Object.entries(texts).map(([path, text]) => [path, encode(xmlStart + text)]));

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const types = "http://schemas.openxmlformats.org/package/2006/content-types";
const packaged = "http://schemas.openxmlformats.org/package/2006/relationships";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const spreadsheet = "application/vnd.openxmlformats-officedocument.spreadsheetml";

const texts: Readonly<Record<string, string>> = {
  "[Content_Types].xml": `<Types xmlns="${types}"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${spreadsheet}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${spreadsheet}.styles+xml"/></Types>`,
  "_rels/.rels": `<Relationships xmlns="${packaged}"><Relationship Id="rId1" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
  "xl/workbook.xml": `<workbook xmlns="${main}" xmlns:r="${office}"><workbookPr/><bookViews><workbookView activeTab="0"/></bookViews><sheets></sheets></workbook>`,
  "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${packaged}"><Relationship Id="rId1" Type="${office}/styles" Target="styles.xml"/></Relationships>`,
  "xl/styles.xml": `<styleSheet xmlns="${main}"><fonts count="1"><font><sz val="9.5"/><name val="Arial"/><family val="2"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>`,
};
