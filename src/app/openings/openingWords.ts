/** An opening written in words: `width=8', height=7', post height=7', tail post=yes, floor=concrete`. */
import type { CellValue } from "../../core/base/cell";
import { err, ok, type Result } from "../../core/base/result";
import { nearestName, normalName } from "../../core/formulas/names";
import type { Field } from "../../core/kitbook/fields";
import type { ScheduleKey } from "../../core/openings/openingRow";
import { matchHeadings } from "../../tables/headings";
import { scheduleColumns } from "../../tables/scheduleColumns";
import type { GivenOpening } from "./givenOpening";

/**
 * Reads `name=value` pairs with commas or semicolons between; names are those of the schedule's columns,
 * in any of the words that people use, and of the book's further fields. Error: a word that says nothing.
 */
export function readOpeningWords(
  text: string,
  fields: readonly Field[],
): Result<GivenOpening, string> {
  const known: Partial<Record<ScheduleKey, CellValue>> = {};
  const others: Record<string, CellValue> = {};
  // A comma inside a value, such as 213,4 cm, is not followed by a name and an equals sign.
  for (const pair of text.split(/[,;](?=[^,;=]+=)/)) {
    if (pair.trim() === "") continue;
    const [name = "", ...rest] = pair.split("=");
    const value = rest.join("=").trim();
    const key = fieldNamed(name, fields);
    if (rest.length === 0)
      return err(`"${pair.trim()}" is no field and its value: write width=8'.`);
    if (key === null) return err(unknown(name.trim(), fields));
    if (key.kind === "column") known[key.key] = value;
    else others[key.name] = value;
  }
  return ok({ fields: known, others });
}

type FieldKey =
  | { readonly kind: "column"; readonly key: ScheduleKey }
  | { readonly kind: "further"; readonly name: string };

/** The field that the words mean; `null` where they mean none. */
export function fieldNamed(words: string, fields: readonly Field[]): FieldKey | null {
  const wanted = normalName(words);
  const further = fields.find(({ name, kind }) => kind === "found" && name === wanted);
  if (further !== undefined) return { kind: "further", name: further.name };
  const [match] = matchHeadings([words.trim()], scheduleColumns).matches;
  return match === undefined ? null : { kind: "column", key: match.key };
}

function unknown(name: string, fields: readonly Field[]): string {
  const labels = fields.map(({ label }) => label);
  const near = nearestName(name, labels);
  const hint = near === undefined ? `Known are ${labels.join(", ")}.` : `Did you mean ${near}?`;
  return `"${name}" is no field of an opening. ${hint}`;
}
