/** Giving the kit book away as a file, where the host saves files. */
import { Button } from "@fluentui/react-components";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import { kitBookDrawings } from "../../tables/kitBookDrawings";
import { kitBookLines } from "../../tables/kitBookLines";
import { blankSheet, workbookOf } from "../../workbook/blankSheet";
import { drawnWorkbook } from "../../workbook/drawnWorkbook";
import type { FileKind } from "../../workbook/files";
import type { WorkbookSnapshot } from "../../workbook/snapshot";
import { useSharedStyles } from "../parts/parts.styles";
import { useBroken } from "../state/useBroken";
import { usePane } from "../state/paneContext";
import { useBookStyles } from "./book.styles";

const fileName = "Kit book";

export function ExportBook({ hand }: { readonly hand: KitBookAtHand }) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  const { saveFile } = usePane();
  const onBroken = useBroken();
  if (saveFile === null) {
    return (
      <div className={shared.small}>
        To give the book away, save a copy of this workbook: the other side takes over its rows from
        there.
      </div>
    );
  }
  const save = (kind: FileKind): void => {
    saveFile(kind === "xlsx" ? asSheets(hand) : asText(hand), kind).catch(onBroken);
  };
  return (
    <div className={styles.buttons}>
      <Button onClick={() => save("xlsx")}>Save the book as .xlsx</Button>
      <Button onClick={() => save("csv")}>Save the book as .csv</Button>
    </div>
  );
}

const asSheets = ({ rows }: KitBookAtHand): WorkbookSnapshot =>
  drawnWorkbook(fileName, kitBookDrawings(rows));

const asText = ({ rows }: KitBookAtHand): WorkbookSnapshot =>
  workbookOf(fileName, [
    {
      ...blankSheet(fileName),
      rows: kitBookLines(rows).map((cells) =>
        cells.map((value) => (value === null ? null : { value })),
      ),
    },
  ]);
