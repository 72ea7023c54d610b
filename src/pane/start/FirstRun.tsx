/** The first steps in a workbook without a schedule: make one, look at the demo, or say where it is. */
import { Button, Checkbox, makeStyles, mergeClasses } from "@fluentui/react-components";
import { useId, useState } from "react";
import { setUpParts, type SetUpPart } from "../../app/writing/setUpWorkbook";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { useSharedStyles } from "../parts/parts.styles";
import { useAdding } from "../setUp/useAdding";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  view: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalL },
  way: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalS,
    padding: tokens.spacingHorizontalM,
  },
  parts: { minWidth: 0, margin: 0, padding: 0, border: "none" },
  part: { display: "block" },
});

const partWords: Readonly<Record<SetUpPart, { readonly name: string; readonly says: string }>> = {
  schedule: {
    name: "Schedule",
    says: "a row for each opening, with lists to choose from",
  },
  items: { name: "Items", says: "what each item costs and weighs, to type yours over" },
  jobs: {
    name: "Job dates",
    says: "when each job needs its hardware and where it goes, for orders",
  },
  kitBook: { name: "Kit book", says: "what each type of opening needs, to make yours" },
  prices: {
    name: "Prices",
    says: "rates, quotation terms, ranges and alternates, to type yours over",
  },
};

export function FirstRun({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { isBusy, add, addDemo } = useAdding();
  const partsId = useId();
  const { hasOwnItems, hasOwnKitBook } = takeOff.inputs;
  const has: Readonly<Record<SetUpPart, boolean>> = {
    schedule: false,
    items: hasOwnItems,
    jobs: false,
    kitBook: hasOwnKitBook,
    prices: false,
  };
  const offered = setUpParts.filter((part) => !has[part]);
  const [leftOut, setLeftOut] = useState<ReadonlySet<SetUpPart>>(
    new Set(["jobs", "kitBook", "prices"]),
  );
  const wanted = offered.filter((part) => !leftOut.has(part));
  const types = takeOff.estimate.kitBook.types.map(({ name }) => name);
  return (
    <div className={styles.view}>
      <div>
        <h2 className={shared.heading}>No schedule of openings here yet</h2>
        <p className={shared.small}>
          A schedule is a sheet or table with a heading row (mark, type, quantity, width, height,
          post height) and a row for each opening. If yours has other headings, choose it above.
        </p>
      </div>
      <section className={mergeClasses(shared.card, styles.way)}>
        <h3 id={partsId} className={shared.subheading}>
          Start with sheets ready to fill
        </h3>
        <div role="group" aria-labelledby={partsId} className={styles.parts}>
          {offered.map((part) => (
            <Checkbox
              key={part}
              checked={!leftOut.has(part)}
              onChange={(_, { checked }) =>
                setLeftOut(
                  new Set(
                    checked === true
                      ? [...leftOut].filter((each) => each !== part)
                      : [...leftOut, part],
                  ),
                )
              }
              label={
                <>
                  {partWords[part].name}
                  <span className={mergeClasses(shared.small, styles.part)}>
                    {partWords[part].says}
                  </span>
                </>
              }
            />
          ))}
        </div>
        <Button
          appearance="primary"
          disabled={isBusy || wanted.length === 0}
          onClick={() => add(new Set(wanted), types)}
        >
          Add {wanted.length === 1 ? "this sheet" : "these sheets"}
        </Button>
        <div className={shared.small}>Your own sheets stay as they are.</div>
      </section>
      <section className={mergeClasses(shared.card, styles.way)}>
        <h3 className={shared.subheading}>Look around first</h3>
        <div>Three invented jobs, with the mistakes that people make.</div>
        <Button disabled={isBusy} onClick={addDemo}>
          Add the demo
        </Button>
      </section>
    </div>
  );
}
