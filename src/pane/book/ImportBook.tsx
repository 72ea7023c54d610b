/** Taking rows over from another workbook's kit book: what would change first, then written as one act. */
import { useId } from "react";
import type { Inputs } from "../../app/reading/inputs";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import { LevelIcon } from "../parts/LevelIcon";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { counted, countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { Outcome } from "../sheets/Outcome";
import { useBookStyles } from "./book.styles";
import { ChangeCard } from "./ChangeCard";
import { MoreList } from "./MoreList";
import { changeKey, useImport, type ImportState } from "./useImport";
import { useWriteDrawings, type WriteDrawings } from "./useWriteDrawings";
import { Worked } from "./Worked";
import { WriteButton } from "./WriteButton";

export type ImportBookProps = { readonly hand: KitBookAtHand; readonly inputs: Inputs };

export function ImportBook({ hand, inputs }: ImportBookProps) {
  const shared = useSharedStyles();
  const state = useImport(hand, inputs);
  const writing = useWriteDrawings();
  const id = useId();
  return (
    <>
      <label htmlFor={id}>Take over rows of the kit book in another file (.xlsx or .csv)</label>
      <input
        id={id}
        type="file"
        accept=".xlsx,.xlsm,.csv"
        onChange={(event) => {
          const [picked] = event.currentTarget.files ?? [];
          if (picked !== undefined) state.choose(picked);
        }}
      />
      <Outcome writing={writing.writing} />
      {state.fault === "" ? null : <Notice level="stop">{state.fault}</Notice>}
      {state.file === null ? null : (
        <Worked name={`Comparing with ${state.file.name}`} steps={state.comparing}>
          {() =>
            state.changes.length === 0 ? (
              <div role="status">The kit book in {state.file?.name} says the same as this one.</div>
            ) : (
              <Changes
                state={state}
                name={state.file?.name ?? ""}
                edition={inputs.kitBookEdition + 1}
                {...writing}
              />
            )
          }
        </Worked>
      )}
      {state.file?.findings.map(({ message }) => (
        <div key={message} className={shared.small}>
          {message}
        </div>
      ))}
    </>
  );
}

type ChangesProps = WriteDrawings & {
  readonly state: ImportState;
  readonly name: string;
  readonly edition: number;
};

function Changes({ state, name, edition, writing, write }: ChangesProps) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  const { changes, isTaken, take, taken, starterRowsGone, checking } = state;
  return (
    <>
      <div role="status">
        <h3 className={shared.subheading}>
          {name}: {counted(changes.length, "row differs", "rows differ")}, {countText(taken)} to
          take over
        </h3>
      </div>
      {starterRowsGone.length === 0 ? null : (
        <Notice
          level="warn"
          quiet
          actions={
            <SmallButton onClick={() => take(starterRowsGone, false)}>
              Keep the starter’s rows
            </SmallButton>
          }
        >
          This workbook counts by the starter, and {name} would take its place:{" "}
          {counted(starterRowsGone.length, "row of the starter goes", "rows of the starter go")},
          since it has no such rows.
        </Notice>
      )}
      <div className={styles.buttons}>
        <SmallButton onClick={() => take(changes, true)}>All of them</SmallButton>
        <SmallButton onClick={() => take(changes, false)}>None</SmallButton>
        <SmallButton onClick={state.leave}>Leave this file</SmallButton>
      </div>
      <MoreList items={changes}>
        {(change) => (
          <ChangeCard
            key={changeKey(change)}
            change={change}
            choice={{
              isTaken: isTaken(change),
              onTake: (wanted) => take([change], wanted),
            }}
          />
        )}
      </MoreList>
      <Worked name="Checking the book that comes of it" steps={checking}>
        {(book) =>
          book?.stops.map(({ message }) => (
            <div key={message} className={styles.fault}>
              <LevelIcon level="stop" />
              <span>A row would not work then. {message}</span>
            </div>
          ))
        }
      </Worked>
      <div className={shared.small}>
        {edition === 1
          ? "The book is written as four new sheets, and counts from then on."
          : `The book is written as four new sheets, edition ${edition}, and counts from then on. The sheets of edition ${edition - 1} stay as they are, with your looks, notes and formulas. They count again if you delete the new ones.`}
      </div>
      <WriteButton
        label={`Take over ${counted(taken, "row")}`}
        writing={writing}
        canWrite={taken > 0 && checking.state.kind === "done"}
        onWrite={() => write(state.draw())}
      />
    </>
  );
}
