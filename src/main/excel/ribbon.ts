/** The ribbon's commands. The manifest names them by the same ids. */
import type { ActiveSheetOutcome } from "../../app/writing/takeOffActiveSheet";
import { faultInside } from "../../workbook/thrownFault";
import type { Workbook } from "../../workbook/workbook";

type CommandEvent = Office.AddinCommands.Event;

/** What answers a command: the workbook, and where to say what came of it. */
export type CommandDesk = {
  readonly workbook: Promise<Workbook>;
  readonly say: (text: string) => void;
};

/**
 * Commands for a page that is only being loaded: a button that starts the add-in is pressed before
 * there is anything to answer it, and Excel does not ask twice. What is pressed waits for `connect`.
 */
export function commandsToCome(): {
  readonly associate: () => void;
  readonly connect: (desk: CommandDesk) => void;
} {
  let connect: (desk: CommandDesk) => void = () => undefined;
  const desk = new Promise<CommandDesk>((resolve) => (connect = resolve));
  const workbook = desk.then((each) => each.workbook);
  // Whoever presses a button is told; without one it is for the page to say.
  workbook.catch(() => undefined);
  return {
    associate: () => associateCommands(workbook, (text) => void desk.then(({ say }) => say(text))),
    connect: (each) => connect(each),
  };
}

/** Excel waits for each command to be told that it is done, whatever came of it. */
export function associateCommands(workbook: Promise<Workbook>, say: (text: string) => void): void {
  Office.actions.associate("takeOffActiveSheet", (event: CommandEvent) => {
    void takeOff(workbook, say).finally(() => event.completed());
  });
}

async function takeOff(workbook: Promise<Workbook>, say: (text: string) => void): Promise<void> {
  try {
    const open = await workbook;
    const { takeOffActiveSheet } = await import("../../app/writing/takeOffActiveSheet");
    const outcome = await takeOffActiveSheet(open);
    say(outcomeWords(outcome));
    if (outcome.kind !== "written" || !outcome.isComplete) await Office.addin.showAsTaskpane();
    const [first] = outcome.kind === "written" ? outcome.sheets : [];
    if (first !== undefined) await open.goTo({ sheet: first.name, row: 0, column: 0 });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    say(faultInside(error)?.message ?? `That did not work. Try again. It said: ${why}`);
    await Office.addin.showAsTaskpane();
  }
}

/** What a command came to, in a sentence or two. */
export function outcomeWords(outcome: ActiveSheetOutcome): string {
  switch (outcome.kind) {
    case "written": {
      const names = outcome.sheets.map(({ name }) => `“${name}”`).join(", ");
      const kept = outcome.sheets.flatMap(({ keptAs }) => (keptAs === null ? [] : [`“${keptAs}”`]));
      return [
        `Wrote ${names}.`,
        kept.length === 0
          ? ""
          : `What you typed on the sheets before is kept on ${kept.join(", ")}.`,
        outcome.isComplete ? "" : "Not everything could be counted: see what to mend below.",
      ]
        .filter((sentence) => sentence !== "")
        .join(" ");
    }
    case "no-schedule":
      return `“${outcome.sheet}” holds no openings that could be counted. Go to the sheet with the schedule and try again.`;
    case "refused":
      return outcome.fault.message;
  }
}
