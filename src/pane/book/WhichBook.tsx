/** Which kit book counts, and what is wrong with its rows. */
import { setUpDrawings } from "../../app/writing/setUpWorkbook";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import { Disclosure } from "../parts/Disclosure";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { Outcome } from "../sheets/Outcome";
import { Folds } from "./Folds";
import { useWriteDrawings } from "./useWriteDrawings";
import { WriteButton } from "./WriteButton";

export type WhichBookProps = { readonly takeOff: WorkbookTakeOff; readonly hand: KitBookAtHand };

export function WhichBook({ takeOff, hand }: WhichBookProps) {
  const shared = useSharedStyles();
  const { writing, write } = useWriteDrawings();
  const { kitBookEdition } = takeOff.inputs;
  const faults = hand.findings.filter(({ level }) => level !== "note");
  const notes = hand.findings.filter(({ level }) => level === "note");
  const edition = kitBookEdition > 1 ? `, edition ${kitBookEdition}` : "";
  return (
    <>
      {hand.isStarter ? (
        <Notice
          level="note"
          quiet
          actions={
            <WriteButton
              label="Own it: add its sheets"
              writing={writing}
              size="small"
              onWrite={() =>
                write(
                  setUpDrawings(
                    new Set(["kitBook"]),
                    hand.book.types.map(({ name }) => name),
                  ),
                )
              }
            />
          }
        >
          The starter kit book is in use. Own it to change its limits, parts and charts, and to add
          opening types.
        </Notice>
      ) : (
        <div>Counted by the workbook’s own kit book{edition}.</div>
      )}
      <Outcome writing={writing} />
      {faults.length === 0 ? (
        <Notice level="done" quiet>
          Every row works.
        </Notice>
      ) : (
        <section aria-label="What is wrong with the rows" className={shared.stack}>
          <h3 className={shared.subheading}>What is wrong with the rows</h3>
          <Folds findings={faults} />
        </section>
      )}
      {notes.length === 0 ? null : (
        <Disclosure label={<span>Good to know ({notes.length})</span>}>
          {() => <Folds findings={notes} />}
        </Disclosure>
      )}
    </>
  );
}
