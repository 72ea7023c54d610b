/**
 * `npm run kitbook`: what a kit book says, without a screen.
 *
 * Exit status: 0 nothing is wrong, 1 a row does not work (or, for `try`, the opening is not counted),
 * 2 unusable input (the message on stderr).
 */
import { parseArgs } from "node:util";
import { fileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import { snapshotParts } from "../../adapters/xlsx/snapshotBytes";
import { checkKitBook } from "../../app/checkKitBook";
import { checkGivenOpening } from "../../app/givenOpening";
import { readInputs } from "../../app/inputs";
import { kitBookAtHand, type KitBookAtHand } from "../../app/kitBookAtHand";
import { fieldNamed, readOpeningWords } from "../../app/openingWords";
import { defaultSettings, readSettings } from "../../app/settings";
import { err, ok, type Result } from "../../core/base/result";
import { finish } from "../../core/base/steps";
import { boundaryTable } from "../../core/bookcheck/boundaries";
import { compareBooks } from "../../core/bookcheck/compareBooks";
import { compareTrials } from "../../core/bookcheck/compareTrials";
import { tryOpening } from "../../core/bookcheck/trial";
import { openingTypeNamed, type OpeningType } from "../../core/kitbook/kitBook";
import { starterKitBook } from "../../core/kitbook/starter/starterKitBook";
import type { Opening } from "../../core/openings/opening";
import { caution } from "../../sheets/caution";
import { kitBookDrawings } from "../../tables/kitBookDrawings";
import { drawnWorkbook } from "../../workbook/drawnWorkbook";
import { answer, type Answer } from "./answer";
import { readWorkbookFile, writeFileWhole } from "./files";
import { boundaryText, changesText, trialChangesText, trialText } from "./kitBookText";
import { findingsText } from "./takeOffText";

const usage = [
  "Use: npm run --silent kitbook -- check FILE",
  "     npm run --silent kitbook -- boundaries FILE --field FIELD --opening WORDS",
  "     npm run --silent kitbook -- try FILE --opening WORDS [--and WORDS]",
  "     npm run --silent kitbook -- diff FILE [OTHER]",
  "     npm run --silent kitbook -- export FILE --out NEW.xlsx",
  "",
  "  FILE             a workbook or .csv with a kit book; the word starter for the one that comes along",
  "  check            rows that do not work, bolts that do not fit, what the book leaves open",
  "  boundaries       the exact values of a field at which any count changes",
  "  try              what each row does for an opening; with --and, what changes between two",
  "  diff             what OTHER has otherwise; the starter against FILE where no OTHER is named",
  "  --opening WORDS  such as \"type=sliding door, width=8', height=7', post height=7', tail post=yes\"",
  "",
  "Exit status: 0 nothing is wrong, 1 something is, 2 unusable input.",
].join("\n");

async function run(words: readonly string[]): Promise<Result<Answer, string>> {
  const read = readWords(words);
  if (!read.ok) return read;
  const { command, paths, opening, other, field, out } = read.value;
  const [path = "starter", second] = paths;
  const hand = await openBook(path);
  if (!hand.ok) return hand;
  switch (command) {
    case "check":
      return check(hand.value);
    case "boundaries":
      return boundaries(hand.value, opening, field);
    case "try":
      return trial(hand.value, opening, other);
    case "diff": {
      if (second === undefined) return ok(changed(starterKitBook, hand.value.rows));
      const after = await openBook(second);
      return after.ok ? ok(changed(hand.value.rows, after.value.rows)) : after;
    }
    case "export":
      return exportTo(hand.value, out);
    default:
      return err(`${command} is no command.\n\n${usage}`);
  }
}

/** The book of a file, or the starter. */
async function openBook(path: string): Promise<Result<KitBookAtHand, string>> {
  const isStarter = path === "starter";
  const workbook = isStarter
    ? ok(fileWorkbook(snapshotParts(drawnWorkbook("starter", kitBookDrawings(starterKitBook))), ""))
    : readWorkbookFile(path);
  if (!workbook.ok) return workbook;
  const settings = isStarter ? defaultSettings : await readSettings(workbook.value);
  const inputs = await readInputs(workbook.value, settings);
  if (!inputs.ok) return err(inputs.error.message);
  if (!inputs.value.hasOwnKitBook) return err(`${path}: no kit book was found in it.`);
  return ok(kitBookAtHand(inputs.value, settings));
}

function check(hand: KitBookAtHand): Result<Answer, string> {
  const { findings } = finish(checkKitBook(hand));
  const complete = findings.every(({ level }) => level !== "stop");
  const lines = [
    ...findingsText(findings),
    "",
    complete ? "Every row works." : "Rows do not work: see the stops above.",
    caution,
  ];
  return ok({ text: lines.join("\n"), complete });
}

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

/** Inches, and plain numbers: from nothing to 50 ft. */
const domain = { from: 0, to: 600 };

function boundaries(
  hand: KitBookAtHand,
  words: string,
  fieldWords: string,
): Result<Answer, string> {
  const found = openingOf(hand, words);
  if (!found.ok) return found;
  const { book, show } = hand;
  const named = fieldNamed(fieldWords, book.fields);
  const name = named === null ? "" : named.kind === "column" ? named.key : named.name;
  const field = book.fields.find((known) => known.name === name);
  if (field === undefined) return err(`--field names no field of an opening: "${fieldWords}".`);
  if (field.kind === "text" || field.kind === "yesNo") {
    return err(`${field.label} is no number, so it has no boundaries.`);
  }
  const table = boundaryTable({ book, ...found.value, field: name, domain, show });
  return ok({ text: boundaryText(table, field, show), complete: true });
}

function trial(hand: KitBookAtHand, words: string, otherWords: string): Result<Answer, string> {
  const { book, show, lengths } = hand;
  const found = openingOf(hand, words);
  if (!found.ok) return found;
  const one = tryOpening(book, found.value.type, found.value.opening, show);
  if (otherWords === "") return ok({ text: trialText(one, lengths), complete: one.isCounted });
  const second = openingOf(hand, otherWords);
  if (!second.ok) return second;
  if (second.value.type !== found.value.type) return err("Compare two openings of one type.");
  const other = tryOpening(book, second.value.type, second.value.opening, show);
  const text = trialChangesText(compareTrials(one, other, lengths));
  return ok({ text, complete: one.isCounted && other.isCounted });
}

const changed = (before: KitBookAtHand["rows"], after: KitBookAtHand["rows"]): Answer => ({
  text: changesText(compareBooks(before, after)),
  complete: true,
});

function exportTo({ rows }: KitBookAtHand, out: string): Result<Answer, string> {
  if (!out.toLowerCase().endsWith(".xlsx")) return err(`Name a new .xlsx with --out.\n\n${usage}`);
  const bytes = fileWorkbook(snapshotParts(drawnWorkbook(out, kitBookDrawings(rows))), out).bytes();
  const saved = writeFileWhole(out, bytes);
  return saved.ok ? ok({ text: `The kit book is in ${out}.`, complete: true }) : saved;
}

type Words = {
  readonly command: string;
  readonly paths: readonly string[];
  readonly opening: string;
  readonly other: string;
  readonly field: string;
  readonly out: string;
};

function readWords(words: readonly string[]): Result<Words, string> {
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      allowPositionals: true,
      options: {
        opening: { type: "string" },
        and: { type: "string" },
        field: { type: "string" },
        out: { type: "string" },
      },
    });
    const [command, ...paths] = positionals;
    if (command === undefined || paths.length === 0) return err(usage);
    const { opening = "", and: other = "", field = "", out = "" } = values;
    return ok({ command, paths, opening, other, field, out });
  } catch (error) {
    // The parser throws on words it does not know: that is a person's fault and not ours.
    if (error instanceof TypeError) return err(`${error.message}\n\n${usage}`);
    throw error;
  }
}

answer(await run(process.argv.slice(2)));
