/** Writes drawings as one act: prepare, swap, finish, and a way back from every point in between. */
import { err, ok, type Result } from "../../core/base/result";
import type { Drawing } from "../../workbook/drawing";
import { withPictureWords } from "../../workbook/pictureWords";
import { cancelled } from "../../workbook/faults";
import type { WorkbookFault, WriteOptions, WrittenSheet } from "../../workbook/workbook";
import { buildSheets, type Prepared } from "./building";
import { listsDrawing, listsMark, listsOn, longLists, withLists, type ListPlaces } from "./choices";
import { halfWritten, tidyingLeft } from "./excelFaults";
import { inExcel } from "./inExcel";
import type { Journal } from "./journal";
import type { Overview } from "./overview";
import { planSheets, type WritePlan } from "./planning";
import { paintPictures, type Images } from "./painting";
import { paintOnCanvas } from "./paintPicture";
import { addPictures } from "./pictures";
import { readBlock } from "./reading";
import { finished, settle, settledOverview, type Session } from "./settling";
import { swapSheets } from "./swapping";

type Written = Result<readonly WrittenSheet[], WorkbookFault>;

/**
 * Round trips, whatever the count of rows: one to look, two or more to prepare (one for each 2 MB
 * written and each 40,000 cells read back), one to swap, one or three to finish. Pictures take one
 * more to prepare for each 2 MB of them and where older ones may be, and one or two to finish.
 *
 * Where they cannot be painted, or Excel takes none, all is written with words in their place.
 */
export async function writeDrawings(
  session: Session,
  wanted: readonly Drawing[],
  { onProgress = () => undefined, signal }: WriteOptions = {},
): Promise<Written> {
  const isStopped = (): boolean => signal?.aborted === true;
  if (isStopped()) return err(cancelled);
  onProgress(0);
  let done = 0;
  const onPart = (from: number, to: number) => (part: number) => {
    done = Math.max(done, from + (to - from) * part);
    onProgress(done);
  };
  const images = await paintPictures(
    wanted,
    session.paint ?? paintOnCanvas,
    onPart(0, 0.2),
    isStopped,
  );
  const act = { session, onBuilt: onPart(done, 0.8), onSwapped: onPart(0.8, 1), isStopped };
  if (images !== null) {
    const written = await writeOnce(act, wanted, images);
    if (written !== "without pictures") return written;
  }
  const written = await writeOnce(act, wanted.map(withPictureWords), new Map());
  if (written === "without pictures") throw new RangeError("There were no pictures to refuse.");
  return written.ok
    ? ok(written.value.map((sheet, index) => saysWords(sheet, wanted[index])))
    : written;
}

/** One try at writing. */
type Act = {
  readonly session: Session;
  readonly onBuilt: (part: number) => void;
  readonly onSwapped: (part: number) => void;
  readonly isStopped: () => boolean;
};

async function writeOnce(
  { session, onBuilt, onSwapped, isStopped }: Act,
  drawings: readonly Drawing[],
  images: Images,
): Promise<Written | "without pictures"> {
  if (isStopped()) return err(cancelled);
  const overview = await settledOverview(session);
  if (!overview.ok) return overview;
  const prepared = await preparation(session, drawings, overview.value);
  if (!prepared.ok) return prepared;
  const { plan, places } = prepared.value;
  const journal: Journal = {
    version: 1,
    writer: session.writer,
    at: session.now(),
    phase: "building",
    sheets: plan.sheets.map((sheet) => sheet.journal),
  };
  const built = await inExcel((context) =>
    buildSheets(
      context,
      plan,
      journal,
      places,
      (count) => onBuilt(count / (plan.sheets.length + 1)),
      isStopped,
    ),
  );
  if (!built.ok || built.value === null || isStopped()) {
    await settle(session);
    return built.ok ? err(cancelled) : built;
  }
  let ready = built.value;
  if (images.size > 0) {
    const pictured = await inExcel((context) => addPictures(context, ready, images, journal));
    if (!pictured.ok || isStopped()) {
      const settled = await settle(session);
      if (pictured.ok) return err(cancelled);
      return settled === "undone" && isOfPictures(pictured.error) ? "without pictures" : pictured;
    }
    ready = pictured.value;
  }
  onBuilt(1);
  return await swapAndFinish(session, journal, ready, onSwapped);
}

/** Whether it is worth trying again with words; not where Excel would refuse those as well. */
const isOfPictures = ({ code }: WorkbookFault): boolean =>
  code !== "workbook-closed" && code !== "cell-being-edited";

/** With what became of the pictures of the drawing that it was. */
const saysWords = (sheet: WrittenSheet, drawing: Drawing | undefined): WrittenSheet =>
  (drawing?.pictures ?? []).length === 0 ? sheet : { ...sheet, pictures: "words" };

async function swapAndFinish(
  session: Session,
  journal: Journal,
  prepared: readonly Prepared[],
  onPart: (part: number) => void,
): Promise<Written> {
  const swapped = await inExcel((context) => swapSheets(context, prepared, journal, session.now()));
  const done = swapped.ok ? swapped.value : await settle(session);
  if (done === "unsettled") return err(halfWritten);
  if (done === "undone") return swapped.ok ? err(halfWritten) : swapped;
  onPart(0.5);
  const finishing = await finished(session, done);
  if (!finishing.ok) return err(tidyingLeft);
  const { kept, hasCharts } = finishing.value;
  onPart(1);
  return ok(
    prepared
      .map(({ plan }) => plan.journal)
      .filter(({ mark }) => mark?.kind !== listsMark.kind)
      .map(({ name, mark, was, charts }): WrittenSheet => ({
        name,
        mark,
        was,
        keptAs: kept.get(name) ?? null,
        ...(hasCharts || charts.length === 0 ? {} : { charts: "none" }),
      })),
  );
}

/** The plan, with a sheet of lists where drop-downs need one. */
async function preparation(
  session: Session,
  drawings: readonly Drawing[],
  overview: Overview,
): Promise<Result<{ readonly plan: WritePlan; readonly places: ListPlaces }, WorkbookFault>> {
  const wanted = longLists(drawings);
  const standing = overview.sheets.find(({ mark }) => mark?.kind === listsMark.kind);
  let known: ListPlaces["lists"] = [];
  if (wanted.length > 0 && standing !== undefined) {
    const block = await inExcel(
      (context) => readBlock(context, { kind: "sheet", sheet: standing.name }),
      session.patience,
    );
    if (!block.ok) return block;
    if (!block.value.ok) return block.value;
    known = listsOn(block.value.value);
  }
  const lists = withLists(known, wanted);
  const isMore = lists.length > known.length;
  const all = isMore ? [...drawings, listsDrawing(lists)] : drawings;
  const plan = planSheets(all, overview, session.writer);
  if (!plan.ok) return plan;
  const made = plan.value.sheets.find(({ journal }) => journal.mark?.kind === listsMark.kind);
  const sheet = made?.live?.name ?? made?.journal.aside ?? standing?.name ?? null;
  return ok({ plan: plan.value, places: { sheet, lists } });
}
