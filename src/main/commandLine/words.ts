/** The words after a command, as Node's own parser reads them. */
import { parseArgs, type ParseArgsConfig } from "node:util";
import { err, ok, type Result } from "../../core/base/result";
import type { LengthUnit } from "../../core/lengths/length";

type Options = NonNullable<ParseArgsConfig["options"]>;

const help = { help: { type: "boolean", short: "h" } } as const;

type Config<Wanted extends Options> = {
  readonly args: string[];
  readonly allowPositionals: true;
  readonly options: Wanted & typeof help;
};

/** What was said of each option, and the words that are no options. */
export type Words<Wanted extends Options> = ReturnType<typeof parseArgs<Config<Wanted>>>;

/** Every command knows `--help` too. Error: a word that it does not know, or the usage asked for. */
export function readWords<const Wanted extends Options>(
  words: readonly string[],
  options: Wanted,
  usage: string,
): Result<Words<Wanted>, string> {
  try {
    const read = parseArgs<Config<Wanted>>({
      args: [...words],
      allowPositionals: true,
      options: { ...options, ...help },
    });
    const { help: isAsked } = read.values as { readonly help?: boolean };
    return isAsked === true ? err(usage) : ok(read);
  } catch (error) {
    if (isAboutWords(error)) return err(wrongWords(error.message, usage));
    throw error;
  }
}

/** The parser throws on words it does not know: that is a person's fault and not ours. */
const isAboutWords = (error: unknown): error is Error =>
  typeof error === "object" &&
  error !== null &&
  "code" in error &&
  typeof error.code === "string" &&
  error.code.startsWith("ERR_PARSE_ARGS_");

/** What is wrong with the words, with the usage below it. */
export const wrongWords = (says: string, usage: string): string => `${says}\n\n${usage}`;

/** What `--unit` says; `null` where it says nothing. */
export function readUnit(word: string | undefined): Result<LengthUnit | null, string> {
  if (word === undefined) return ok(null);
  return word === "in" || word === "mm" ? ok(word) : err(`--unit is in or mm, and not ${word}.`);
}
