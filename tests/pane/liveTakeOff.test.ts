import { afterEach, describe, expect, test } from "@jest/globals";
import type { MemoryWorkbook } from "../../src/adapters/memory/memoryWorkbook";
import { liveTakeOff, type LiveTakeOff } from "../../src/pane/state/liveTakeOff";
import { firstState, nextState, type TakeOffState } from "../../src/pane/state/takeOffState";
import type { Workbook, WorkbookFault } from "../../src/workbook/workbook";
import { scheduleHeadings, scheduleRows, workbookOf } from "../app/typedWorkbook";

let open: LiveTakeOff | null = null;
afterEach(() => open?.close());

function opened(workbook: Workbook) {
  let state: TakeOffState = firstState;
  const phases: string[] = [];
  const faults: WorkbookFault[] = [];
  const broken: unknown[] = [];
  const live = liveTakeOff(workbook, {
    tell: (event) => {
      state = nextState(state, event);
      if (phases.at(-1) !== state.phase) phases.push(state.phase);
    },
    onFault: (fault) => faults.push(fault),
    onBroken: (error) => broken.push(error),
  });
  open = live;
  const until = async (isSo: (state: TakeOffState) => boolean): Promise<TakeOffState> => {
    for (let waited = 0; waited < 20_000; waited += 10) {
      if (isSo(state)) return state;
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
    throw new Error(`Still ${state.phase}.`);
  };
  return { live, until, phases, faults, broken };
}

const isReady = ({ phase }: TakeOffState): boolean => phase === "ready";
const openings = ({ takeOff }: TakeOffState): number =>
  takeOff?.estimate.jobs.reduce((sum, job) => sum + job.rows, 0) ?? 0;

const oneDoor = () =>
  workbookOf({ Schedule: scheduleRows("A-1 | 1 | sliding door | 8' | 7' | 8'") });

const addDoor = (workbook: MemoryWorkbook, row: number): void => {
  const cells = ["Crib", `A-${row}`, 1, "sliding door", "4'", "7'", "8'"];
  for (const [column, value] of cells.entries()) {
    workbook.type({ sheet: "Schedule", row, column }, value);
  }
};

describe("a live take-off", () => {
  test("counts at once, and once for a burst of changes", async () => {
    const workbook = oneDoor();
    const { until, phases } = opened(workbook);
    await until(isReady);
    phases.length = 0;
    addDoor(workbook, 2);
    addDoor(workbook, 3);
    await until((state) => openings(state) === 3);
    expect(phases.filter((phase) => phase === "reading")).toHaveLength(1);
  });

  test("keeps what was counted while it counts again, and says when the host fails", async () => {
    const workbook = oneDoor();
    const { live, until } = opened(workbook);
    await until(isReady);
    workbook.failAt(1, true);
    live.count();
    const failed = await until(({ phase }) => phase === "failed");
    expect(failed.fault?.message).toContain("did not answer");
    expect(openings(failed)).toBe(1);
    workbook.failAt(null);
    live.count();
    expect((await until(isReady)).fault).toBeNull();
  });

  test("is stopped in the middle of long work, and goes on when asked", async () => {
    const rows = Array.from({ length: 3000 }, (_, at) => [
      "Crib",
      `A-${at}`,
      1,
      "sliding door",
      "4'",
      "7'",
      "8'",
    ]);
    const { live, until, phases } = opened(workbookOf({ Schedule: [scheduleHeadings, ...rows] }));
    await until(({ phase }) => phase === "counting");
    live.cancel();
    const stopped = await until(({ phase }) => phase === "stopped");
    expect(stopped.takeOff).toBeNull();
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(phases.at(-1)).toBe("stopped");
    live.count();
    expect(openings(await until(isReady))).toBe(3000);
  });

  test("keeps settings in the workbook and counts by them", async () => {
    const workbook = workbookOf({
      Schedule: scheduleRows("A-1 | 1 | sliding door | 2438 | 2134 | 2438"),
    });
    const first = opened(workbook);
    expect((await first.until(isReady)).takeOff?.complete).toBe(false);
    first.live.change({ unit: "mm" });
    await first.until(({ takeOff }) => takeOff?.complete === true);
    first.live.close();
    const second = opened(workbook);
    expect((await second.until(isReady)).settings.unit).toBe("mm");
  });

  test("reads the settings again when sheets come and go, as when another file is opened", async () => {
    const workbook = oneDoor();
    const { until } = opened(workbook);
    await until(isReady);
    await workbook.writeSetting("settings", JSON.stringify({ currency: "EUR" }));
    workbook.rename("Schedule", "Doors");
    await until(({ settings }) => settings.currency === "EUR");
  });

  test("says when settings cannot be kept", async () => {
    const workbook = oneDoor();
    const { live, until, faults } = opened({
      ...workbook,
      writeSetting: () =>
        Promise.resolve({
          ok: false,
          error: { code: "workbook-closed", message: "It is closed." },
        }),
    });
    await until(isReady);
    live.change({ withCosts: false });
    await until((state) => isReady(state) && faults.length > 0);
    expect(faults).toEqual([{ code: "workbook-closed", message: "It is closed." }]);
  });

  test("shows a fault of its own instead of blaming the spreadsheet", async () => {
    const { broken } = opened({
      ...oneDoor(),
      read: () => Promise.reject(new TypeError("a slip")),
    });
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(broken).toHaveLength(1);
  });

  test("hears nothing any more once it is closed", async () => {
    const workbook = oneDoor();
    const { live, until, phases } = opened(workbook);
    await until(isReady);
    live.close();
    await new Promise((resolve) => setTimeout(resolve, 20));
    addDoor(workbook, 2);
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(phases.at(-1)).toBe("ready");
  });
});
