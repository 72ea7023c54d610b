/** What an owner typed to see what would become of jobs, kept in the workbook's settings. */
import type { Workbook } from "../../workbook/workbook";
import { aText, listOf, oneOf, partsOf, type Shape } from "../jsonShape";
import { jsonValue } from "../jsonValue";

/** How a price at which the job would be won is given. */
export const winWays = ["price", "markup", "margin"] as const;
export type WinWay = (typeof winWays)[number];

export type TypedChanges = ReadonlyMap<string, string>;

export type TypedWhatIf = {
  /** By `factorName`; what is not there is as estimated. */
  readonly changes: TypedChanges;
  /** A price, or a percentage, by `winWay`; the empty text for none. */
  readonly win: string;
  readonly winWay: WinWay;
  readonly price: "held" | "follows";
};

export const nothingTyped: TypedWhatIf = {
  changes: new Map(),
  win: "",
  winWay: "price",
  price: "held",
};

export type KeptWhatIfs = {
  readonly onAll: TypedChanges;
  /** By `jobKey`. */
  readonly byJob: ReadonlyMap<string, TypedWhatIf>;
};

export const noWhatIfs: KeptWhatIfs = { onAll: new Map(), byJob: new Map() };

const whatIfKey = "what-if";

/** A change as it is kept. */
type Kept = { readonly name: string; readonly typed: string };
const changesShape = listOf(partsOf<Kept>({ name: aText, typed: aText }));

type KeptJob = Omit<TypedWhatIf, "changes"> & {
  readonly job: string;
  readonly changes: readonly Kept[];
};
type KeptText = { readonly onAll: readonly Kept[]; readonly jobs: readonly KeptJob[] };

const keptShape: Shape<KeptText> = partsOf<KeptText>({
  onAll: changesShape,
  jobs: listOf(
    partsOf<KeptJob>({
      job: aText,
      changes: changesShape,
      win: aText,
      winWay: oneOf(winWays),
      price: oneOf(["held", "follows"] as const),
    }),
  ),
});

/** Nothing where none is kept, or another version left what is not known here. */
export async function readWhatIfs(workbook: Pick<Workbook, "readSetting">): Promise<KeptWhatIfs> {
  const text = await workbook.readSetting(whatIfKey);
  const kept = text === null ? undefined : keptShape(jsonValue(text));
  if (kept === undefined) return noWhatIfs;
  return {
    onAll: changesOf(kept.onAll),
    byJob: new Map(
      kept.jobs.map(({ job, changes, ...typed }) => [
        job,
        { ...typed, changes: changesOf(changes) },
      ]),
    ),
  };
}

/** Keeps them; a job for which nothing is typed is left out. */
export const keepWhatIfs = (
  workbook: Pick<Workbook, "writeSetting">,
  { onAll, byJob }: KeptWhatIfs,
): ReturnType<Workbook["writeSetting"]> => {
  const jobs = [...byJob]
    .filter(([, typed]) => isTyped(typed))
    .map(([job, { changes, ...typed }]): KeptJob => ({ job, ...typed, changes: keptOf(changes) }));
  const kept: KeptText = { onAll: keptOf(onAll), jobs };
  return workbook.writeSetting(whatIfKey, JSON.stringify(kept));
};

export const isTyped = ({ changes, win, price }: TypedWhatIf): boolean =>
  keptOf(changes).length > 0 || win.trim() !== "" || price !== nothingTyped.price;

const changesOf = (kept: readonly Kept[]): TypedChanges =>
  new Map(kept.map(({ name, typed }) => [name, typed]));

const keptOf = (changes: TypedChanges): readonly Kept[] =>
  [...changes].flatMap(([name, typed]) => (typed.trim() === "" ? [] : [{ name, typed }]));
