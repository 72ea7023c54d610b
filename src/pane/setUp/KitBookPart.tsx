/** Which kit book counts, what it knows, and where its errors are. */
import { Button, makeStyles, mergeClasses } from "@fluentui/react-components";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import type { CellPlace } from "../../core/base/cell";
import { kitBookSections, sectionColumns, type KitBookRows } from "../../core/kitbook/rows";
import { foldFindings } from "../mend/foldFindings";
import { FoldedFinding } from "../mend/FoldedFinding";
import { LevelIcon } from "../parts/LevelIcon";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";
import { counted } from "../parts/quantities";
import { useAdding } from "./useAdding";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  places: { display: "flex", flexWrap: "wrap", gap: tokens.spacingHorizontalXS },
  type: { display: "flex", justifyContent: "space-between", gap: tokens.spacingHorizontalM },
  broken: { display: "flex", alignItems: "center", gap: tokens.spacingHorizontalXS },
});

export function KitBookPart({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { isBusy, add } = useAdding();
  const { inputs, estimate, findings } = takeOff;
  const { types } = estimate.kitBook;
  const starts = inputs.hasOwnKitBook ? sectionStarts(inputs.kitBook) : [];
  const sheets = new Set(starts.map(({ place }) => place.sheet));
  const about = findings.filter(({ place }) => place !== null && sheets.has(place.sheet));
  return (
    <>
      {inputs.hasOwnKitBook ? (
        <>
          <div>The workbook has a kit book of its own.</div>
          <div className={styles.places}>
            {starts.map(({ section, place }) => (
              <PlaceButton key={section} place={place} of={section} />
            ))}
          </div>
        </>
      ) : (
        <>
          <div>
            Counted by the starter kit book. To see its rows and make it yours, add it to the
            workbook as four sheets.
          </div>
          <Button
            disabled={isBusy}
            onClick={() =>
              add(
                new Set(["kitBook"]),
                types.map(({ name }) => name),
              )
            }
          >
            Add the kit book’s sheets
          </Button>
        </>
      )}
      <h3 className={shared.subheading}>Opening types</h3>
      <ul className={shared.list}>
        {types.map(({ name, parts, broken }) => (
          <li key={name} className={styles.type}>
            <span>{name}</span>
            {broken.length === 0 ? (
              <span className={mergeClasses(shared.small, shared.number)}>
                {counted(parts.length, "part")}
              </span>
            ) : (
              <span className={styles.broken}>
                <LevelIcon level="stop" />
                {counted(broken.length, "row")} left out
              </span>
            )}
          </li>
        ))}
      </ul>
      {foldFindings(about).map(({ level, folds }) => (
        <ul key={level} className={mergeClasses(shared.list, shared.stack)}>
          {folds.map((fold) => (
            <FoldedFinding key={fold.message} level={level} fold={fold} />
          ))}
        </ul>
      ))}
      {inputs.hasOwnKitBook && about.length === 0 ? <div>It has no errors.</div> : null}
    </>
  );
}

/** The first row of each section that has one. */
function sectionStarts(
  rows: KitBookRows,
): readonly { readonly section: string; readonly place: CellPlace }[] {
  return kitBookSections.flatMap((section) => {
    const [column] = sectionColumns[section];
    const [first] = rows[section] as readonly Readonly<
      Record<string, { place: CellPlace | null }>
    >[];
    const place = first?.[column]?.place ?? null;
    return place === null ? [] : [{ section, place }];
  });
}
