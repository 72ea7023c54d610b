/** Kit book: the book checked, its rows, trying a size, its boundaries, what it leaves open, and other books. */
import { useMemo, useState } from "react";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { openingTypeNamed, type OpeningType } from "../../core/kitbook/kitBook";
import type { Opening } from "../../core/openings/opening";
import { Part } from "../parts/Part";
import { useSharedStyles } from "../parts/parts.styles";
import { useBookStyles } from "./book.styles";
import { BookRows } from "./BookRows";
import { Boundaries } from "./Boundaries";
import { Difference } from "./Difference";
import { ExportBook } from "./ExportBook";
import { ImportBook } from "./ImportBook";
import { LeftOpen } from "./LeftOpen";
import { TrySize } from "./TrySize";
import { TypeChoice } from "./TypeChoice";
import { useBookAtHand } from "./useBookAtHand";
import { useTriedOpening } from "./useTriedOpening";
import { WhichBook } from "./WhichBook";

export function BookView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  const hand = useBookAtHand(takeOff.inputs);
  const [typeName, setTypeName] = useState("");
  const { types } = hand.book;
  const type = openingTypeNamed(hand.book, typeName) ?? types[0];
  return (
    <div className={styles.view}>
      <h2 className={shared.heading}>Kit book</h2>
      <WhichBook takeOff={takeOff} hand={hand} />
      {type === undefined ? null : (
        <AboutType takeOff={takeOff} hand={hand} type={type} onType={setTypeName} />
      )}
      <Part title="What it leaves open">{() => <LeftOpen hand={hand} />}</Part>
      {hand.isStarter ? null : (
        <Part title="Against the starter">{() => <Difference hand={hand} />}</Part>
      )}
      <Part title="Other books">
        {() => (
          <>
            <ImportBook hand={hand} inputs={takeOff.inputs} />
            <ExportBook hand={hand} />
          </>
        )}
      </Part>
    </div>
  );
}

type AboutTypeProps = {
  readonly takeOff: WorkbookTakeOff;
  readonly hand: KitBookAtHand;
  readonly type: OpeningType;
  readonly onType: (name: string) => void;
};

/** The parts that are about one opening type. */
function AboutType({ takeOff, hand, type, onType }: AboutTypeProps) {
  const { jobs } = takeOff.estimate;
  const openings = useMemo<readonly Opening[]>(
    () => jobs.flatMap((job) => job.takeOff.openings),
    [jobs],
  );
  const tried = useTriedOpening(hand, type, openings, onType);
  return (
    <>
      <TypeChoice types={hand.book.types} type={type} onType={onType} />
      <Part title="Its rows">{() => <BookRows hand={hand} type={type} />}</Part>
      <Part title="Try a size">
        {() => <TrySize hand={hand} tried={tried} openings={openings} />}
      </Part>
      <Part title="Boundaries">{() => <Boundaries hand={hand} tried={tried} />}</Part>
    </>
  );
}
