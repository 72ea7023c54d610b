/** `npm run kitbook -- import`: what another kit book would change, and taking it over. */
import {
  importDrawings,
  importedRows,
  importFindings,
  isOffered,
  kitBookImport,
} from "../../app/kitbook/importKitBook";
import type { FileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import type { Inputs } from "../../app/reading/inputs";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import { counted } from "../../core/base/counted";
import { err, ok, type Result } from "../../core/base/result";
import type { RowChange } from "../../core/bookcheck/compareBooks";
import { headingsOf } from "../../core/estimate/estimate";
import type { KitBookRows } from "../../core/kitbook/rows";
import type { Answer } from "./answer";
import { writeFileWhole } from "./files";
import { readTake, type KitBookWords } from "./kitBookArguments";
import { changesJson, findingJson } from "./kitBookJson";
import { changesText } from "./kitBookText";

/** A file that was opened, with the book that it counts by. */
export type OpenBook = {
  readonly workbook: FileWorkbook;
  readonly inputs: Inputs;
  readonly hand: KitBookAtHand;
};

/** Shows the changes; with `yes` also writes the copy. Error: nothing could be taken over, or written. */
export async function importBook(
  { workbook, inputs, hand }: OpenBook,
  other: KitBookRows,
  { yes, take, out, json }: KitBookWords,
): Promise<Result<Answer, string>> {
  if (yes && !out.toLowerCase().endsWith(".xlsx")) return err("Name a new .xlsx with --out.");
  const change = kitBookImport(hand, other);
  const { changes } = change;
  const chosen = readTake(take, changes.length);
  if (!chosen.ok) return chosen;
  const wanted = new Set(
    changes.filter((each, at) => chosen.value?.has(at + 1) ?? isOffered(each, change)),
  );
  const rows = importedRows(change, (each) => wanted.has(each));
  const stops = importFindings(rows, headingsOf(inputs.schedules)).filter(
    ({ level }) => level === "stop",
  );
  const isWritten = yes && wanted.size > 0;
  if (isWritten) {
    const written = await workbook.write(importDrawings(rows, inputs.kitBookEdition));
    if (!written.ok) return err(written.error.message);
    const saved = writeFileWhole(out, workbook.bytes());
    if (!saved.ok) return saved;
  }
  const done = isWritten
    ? `${out} has them as edition ${inputs.kitBookEdition + 1} of its kit book; its other sheets are as they were.`
    : wanted.size === 0
      ? "Nothing is written."
      : "Nothing is written yet: add --yes and --out NEW.xlsx to take them over.";
  const gone = hand.isStarter ? [...wanted].filter(({ kind }) => kind === "removed").length : 0;
  const text = json
    ? JSON.stringify(
        {
          changes: changesJson(changes).map((each, at) => ({
            ...each,
            isTaken: isTaken(changes[at], wanted),
          })),
          stops: stops.map(findingJson),
          written: isWritten ? out : null,
        },
        null,
        2,
      )
    : [
        changesText(changes, (each) => (wanted.has(each) ? "" : " (left)")),
        "",
        `${wanted.size} of ${changes.length} changes are taken over. ${done}`,
        ...(gone === 0
          ? []
          : [
              `This workbook counts by the starter, and the other book takes its place: ${counted(gone, "row of the starter goes", "rows of the starter go")}, since it has no such rows. To keep them, name what is to be taken over with --take.`,
            ]),
        ...stops.map(
          ({ message }) => `The book would then have a row that does not work. ${message}`,
        ),
      ].join("\n");
  return ok({ text, complete: stops.length === 0 });
}

const isTaken = (change: RowChange | undefined, wanted: ReadonlySet<RowChange>): boolean =>
  change !== undefined && wanted.has(change);
