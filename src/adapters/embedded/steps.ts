/**
 * Changes to the grid that stand or fall together: each step knows its own undoing, so that a
 * failure leaves the workbook as it was and the person can undo the whole as one.
 */
import { IUndoRedoService, type ICommandService } from "@univerjs/core";
import type { Engine } from "./engine";

/** One of the grid's own smallest changes, by id. */
export type Change = { readonly id: string; readonly params: object };

export type Step = { readonly redo: Change; readonly undo: Change };

/** A step with the same kind of change both ways. */
export const step = (id: string, redo: object, undo: object): Step => ({
  redo: { id, params: redo },
  undo: { id, params: undo },
});

/** The same step the other way round. */
export const reversed = ({ redo, undo }: Step): Step => ({ redo: undo, undo: redo });

/**
 * Carries out all steps in order, and puts them on the undo stack as one.
 *
 * @throws what the grid threw, after the steps already done have been undone.
 */
export function carryOut(
  { commands, injector }: Engine,
  unit: string,
  steps: readonly Step[],
): void {
  const done: Step[] = [];
  try {
    for (const next of steps) {
      done.push(next);
      execute(commands, next.redo);
    }
    injector.get(IUndoRedoService).pushUndoRedo({
      unitID: unit,
      undoMutations: steps.map(({ undo }) => undo).reverse(),
      redoMutations: steps.map(({ redo }) => redo),
    });
  } catch (fault) {
    // A step that threw may have done half of its work; undoing it is harmless where it did none.
    for (const last of done.reverse()) undoQuietly(commands, last.undo);
    throw fault;
  }
}

/** Carries out one change. @throws Error when the grid refuses it. */
export function execute(commands: ICommandService, { id, params }: Change): void {
  const done: unknown = commands.syncExecuteCommand(id, params);
  if (done === false) throw new Error(`The grid refused ${id}.`);
}

/** One undoing that fails must not stop the others: each puts back a part of its own. */
function undoQuietly(commands: ICommandService, change: Change): void {
  try {
    commands.syncExecuteCommand(change.id, change.params);
  } catch {
    // The fault that started the undoing is the one to tell.
  }
}
