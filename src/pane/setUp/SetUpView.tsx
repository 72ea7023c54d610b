/** How the workbook is read and written: columns, kit book, items, units and money. */
import { Link, makeStyles } from "@fluentui/react-components";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { Part } from "../parts/Part";
import { ColumnsPart } from "./ColumnsPart";
import { ItemsPart } from "./ItemsPart";
import { KitBookPart } from "./KitBookPart";
import { MeasuresPart } from "./MeasuresPart";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  view: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalS },
  licences: { alignSelf: "start", fontSize: tokens.fontSizeBase200 },
});

export function SetUpView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const styles = useStyles();
  return (
    <div className={styles.view}>
      <Part title="Columns of the schedule" startsOpen>
        {() => <ColumnsPart inputs={takeOff.inputs} />}
      </Part>
      <Part title="Kit book">{() => <KitBookPart takeOff={takeOff} />}</Part>
      <Part title="Items and costs">{() => <ItemsPart inputs={takeOff.inputs} />}</Part>
      <Part title="Lengths and money">{() => <MeasuresPart />}</Part>
      <Link href="third-party-licences.txt" target="_blank" className={styles.licences}>
        Licences of what Cribsheet is built on
      </Link>
    </div>
  );
}
