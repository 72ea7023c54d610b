/**
 * `npm run kitbook`: what a kit book says, without a screen; and taking another's rows over.
 *
 * Exit status: 0 nothing is wrong, 1 a row does not work (or, for `try`, the opening is not counted),
 * 2 unusable input (the message on stderr).
 */
import { fileWorkbook, type FileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import { snapshotParts } from "../../adapters/xlsx/snapshotBytes";
import { writeCsv } from "../../adapters/xlsx/writeCsv";
import { bookCheckDrawing, boundaryDrawing } from "../../app/kitbook/bookSheets";
import { checkKitBook } from "../../app/kitbook/checkKitBook";
import { checkGivenOpening } from "../../app/openings/givenOpening";
import { readInputs } from "../../app/reading/inputs";
import { kitBookAtHand, type KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import { fieldNamed, readOpeningWords } from "../../app/openings/openingWords";
import { defaultSettings, readSettings } from "../../app/settings";
import { err, ok, type Result } from "../../core/base/result";
import { finish } from "../../core/base/steps";
import { allSizes, boundaryTable } from "../../core/bookcheck/boundaries";
import { compareBooks, type RowChange } from "../../core/bookcheck/compareBooks";
import { compareTrials } from "../../core/bookcheck/compareTrials";
import { tryOpening } from "../../core/bookcheck/trial";
import type { Field } from "../../core/kitbook/fields";
import { openingTypeNamed, type OpeningType } from "../../core/kitbook/kitBook";
import { starterKitBook } from "../../core/kitbook/starter/starterKitBook";
import type { Opening } from "../../core/openings/opening";
import { caution } from "../../sheets/caution";
import { kitBookDrawings } from "../../tables/kitBookDrawings";
import { kitBookLines } from "../../tables/kitBookLines";
import { drawnWorkbook } from "../../workbook/drawnWorkbook";
import type { Drawing } from "../../workbook/drawing";
import { answer, type Answer } from "./answer";
import { readWorkbookFile, writeFileWhole } from "./files";
import { kitBookUsage, readKitBookWords, type KitBookWords } from "./kitBookArguments";
import { importBook, type OpenBook } from "./kitBookImport";
import { boundariesJson, changesJson, checkJson, trialChangesJson, trialJson } from "./kitBookJson";
import { boundaryText, changesText, trialChangesText, trialText } from "./kitBookText";
import { findingsText } from "./takeOffText";

async function run(words: readonly string[]): Promise<Result<Answer, string>> {
  const read = readKitBookWords(words);
  if (!read.ok) return read;
  const { command, paths } = read.value;
  const [path = "starter", second] = paths;
  const opened = await openBook(path, command === "import");
  if (!opened.ok) return opened;
  const { hand } = opened.value;
  switch (command) {
    case "check":
      return check(opened.value, read.value);
    case "boundaries":
      return boundaries(opened.value, read.value);
    case "try":
      return trial(hand, read.value);
    case "diff": {
      if (second === undefined) return ok(changed(starterKitBook, hand.rows, read.value));
      const after = await openBook(second);
      return after.ok ? ok(changed(hand.rows, after.value.hand.rows, read.value)) : after;
    }
    case "export":
      return exportTo(hand, read.value.out);
    case "import": {
      const other = await openBook(read.value.from);
      return other.ok ? importBook(opened.value, other.value.hand.rows, read.value) : other;
    }
    default:
      return err(`${command} is no command.\n\n${kitBookUsage}`);
  }
}

/** The book of a file, or the starter. `mayLack`: the file need not have one of its own. */
async function openBook(path: string, mayLack = false): Promise<Result<OpenBook, string>> {
  if (path === "") return err(`Name the other kit book with --from.\n\n${kitBookUsage}`);
  const isStarter = path === "starter";
  const opened = isStarter
    ? ok(fileWorkbook(snapshotParts(drawnWorkbook("starter", kitBookDrawings(starterKitBook))), ""))
    : readWorkbookFile(path);
  if (!opened.ok) return opened;
  const workbook = opened.value;
  const settings = isStarter ? defaultSettings : await readSettings(workbook);
  const read = await readInputs(workbook, settings);
  if (!read.ok) return err(read.error.message);
  const inputs = read.value;
  if (!inputs.hasOwnKitBook && !mayLack) return err(`${path}: no kit book was found in it.`);
  return ok({ workbook, inputs, hand: kitBookAtHand(inputs, settings) });
}

async function check(
  { workbook, hand }: OpenBook,
  { json, out }: KitBookWords,
): Promise<Result<Answer, string>> {
  const found = finish(checkKitBook(hand));
  const complete = found.findings.every(({ level }) => level !== "stop");
  const saved = await saveWith(workbook, bookCheckDrawing(hand, found), out);
  if (!saved.ok) return saved;
  const lines = [
    ...findingsText(found.findings),
    "",
    complete ? "Every row works." : "Rows do not work: see the stops above.",
    caution,
  ];
  return ok({ text: json ? jsonText(checkJson(found, complete)) : lines.join("\n"), complete });
}

const jsonText = (value: object): string => JSON.stringify(value, null, 2);

/** Writes a sheet of ours into a copy of the workbook, where a name for it was given. */
async function saveWith(
  workbook: FileWorkbook,
  drawing: Drawing,
  out: string,
): Promise<Result<null, string>> {
  if (out === "") return ok(null);
  if (!isXlsx(out)) return err(`Name a new .xlsx with --out.\n\n${kitBookUsage}`);
  const written = await workbook.write([drawing]);
  return written.ok ? writeFileWhole(out, workbook.bytes()) : err(written.error.message);
}

const isXlsx = (path: string): boolean => path.toLowerCase().endsWith(".xlsx");

type OpeningOfType = { readonly type: OpeningType; readonly opening: Opening };

function openingOf({ book, unit }: KitBookAtHand, words: string): Result<OpeningOfType, string> {
  const given = readOpeningWords(words, book.fields);
  if (!given.ok) return given;
  const types = book.types.map(({ name }) => name);
  const { openings, findings } = checkGivenOpening(given.value, types, unit);
  const [opening] = openings;
  const type = opening === undefined ? undefined : openingTypeNamed(book, opening.type);
  if (opening !== undefined && type !== undefined) return ok({ type, opening });
  return err(findings.map(({ message }) => message).join("\n"));
}

async function boundaries(
  { workbook, hand }: OpenBook,
  { opening: words, field: fieldWords, out, json }: KitBookWords,
): Promise<Result<Answer, string>> {
  const found = openingOf(hand, words);
  if (!found.ok) return found;
  const field = numberField(hand, fieldWords);
  if (!field.ok) return field;
  const { book, show } = hand;
  const asked = { ...found.value, field: field.value };
  const table = boundaryTable({ book, ...asked, field: asked.field.name, domain: allSizes, show });
  const saved = await saveWith(workbook, boundaryDrawing(hand, asked, table), out);
  if (!saved.ok) return saved;
  const text = json
    ? jsonText(boundariesJson(table, asked.field))
    : boundaryText(table, asked.field, show);
  return ok({ text, complete: true });
}

function numberField({ book }: KitBookAtHand, words: string): Result<Field, string> {
  const named = fieldNamed(words, book.fields);
  const name = named === null ? "" : named.kind === "column" ? named.key : named.name;
  const field = book.fields.find((known) => known.name === name);
  if (field === undefined) {
    const numbers = book.fields.filter(({ kind }) => kind !== "text" && kind !== "yesNo");
    const known = numbers.map(({ label }) => label.toLowerCase()).join(", ");
    return err(`--field names no field of an opening: "${words}". There are ${known}.`);
  }
  return field.kind === "text" || field.kind === "yesNo"
    ? err(`${field.label} is no number, so it has no boundaries.`)
    : ok(field);
}

function trial(
  hand: KitBookAtHand,
  { opening, other: otherWords, json }: KitBookWords,
): Result<Answer, string> {
  const { book, show, lengths } = hand;
  const found = openingOf(hand, opening);
  if (!found.ok) return found;
  const one = tryOpening(book, found.value.type, found.value.opening, show);
  if (otherWords === "") {
    return ok({
      text: json ? jsonText(trialJson(one)) : trialText(one, lengths),
      complete: one.isCounted,
    });
  }
  const second = openingOf(hand, otherWords);
  if (!second.ok) return second;
  if (second.value.type !== found.value.type) return err("Compare two openings of one type.");
  const other = tryOpening(book, second.value.type, second.value.opening, show);
  const changes = compareTrials(one, other, lengths);
  const text = json
    ? jsonText({
        one: trialJson(one),
        other: trialJson(other),
        changes: trialChangesJson(changes),
      })
    : trialChangesText(changes);
  return ok({ text, complete: one.isCounted && other.isCounted });
}

function changed(
  before: KitBookAtHand["rows"],
  after: KitBookAtHand["rows"],
  { json }: KitBookWords,
): Answer {
  const changes: readonly RowChange[] = compareBooks(before, after);
  const text = json ? jsonText({ changes: changesJson(changes) }) : changesText(changes);
  return { text, complete: true };
}

function exportTo({ rows }: KitBookAtHand, out: string): Result<Answer, string> {
  const isText = out.toLowerCase().endsWith(".csv");
  if (!isText && !isXlsx(out)) {
    return err(`Name a new .xlsx or .csv with --out.\n\n${kitBookUsage}`);
  }
  const bytes = isText
    ? writeCsv(kitBookLines(rows))
    : fileWorkbook(snapshotParts(drawnWorkbook(out, kitBookDrawings(rows))), out).bytes();
  const saved = writeFileWhole(out, bytes);
  return saved.ok ? ok({ text: `The kit book is in ${out}.`, complete: true }) : saved;
}

answer(await run(process.argv.slice(2)));
