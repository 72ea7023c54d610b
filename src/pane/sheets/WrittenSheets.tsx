/** What was written, with the way to each sheet, and what became of the sheets before. */
import { Link, makeStyles } from "@fluentui/react-components";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { counted } from "../parts/quantities";
import { usePane } from "../state/paneContext";
import type { Written } from "./useWritingAct";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  list: { display: "grid", gap: tokens.spacingVerticalXXS, marginTop: tokens.spacingVerticalXS },
  link: { textAlign: "left" },
});

export function WrittenSheets({
  written: { sheets, changes, older },
}: {
  readonly written: Written;
}) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const kept = sheets.flatMap(({ name, keptAs }) => (keptAs === null ? [] : [{ name, keptAs }]));
  return (
    <>
      <Notice level="done">
        <strong>{counted(sheets.length, "sheet")} written.</strong> {changes}
        <ul className={`${shared.list} ${styles.list}`}>
          {sheets.map(({ name, was }) => (
            <li key={name}>
              <SheetLink name={name} />
              <span className={shared.small}> {was === "new" ? "new" : "renewed"}</span>
            </li>
          ))}
        </ul>
      </Notice>
      {kept.map(({ name, keptAs }) => (
        <Notice key={keptAs} level="note" quiet>
          You had typed into “{name}”. That sheet is kept as it was: <SheetLink name={keptAs} />
        </Notice>
      ))}
      {notDrawn.map(({ words, ...what }) =>
        sheets.some(({ pictures, charts }) =>
          "pictures" in what ? pictures === what.pictures : charts === what.charts,
        ) ? (
          <Notice key={words} level="note" quiet>
            {words}
          </Notice>
        ) : null,
      )}
      {older.length === 0 ? null : (
        <Notice level="warn" quiet>
          From an earlier writing, and not renewed:{" "}
          {older.map((name, index) => (
            <span key={name}>
              {index === 0 ? "" : ", "}
              <SheetLink name={name} />
            </span>
          ))}
        </Notice>
      )}
    </>
  );
}

/** What is said where a host did not draw the pictures or make the charts. */
const notDrawn = [
  {
    pictures: "kept",
    words:
      "The spreadsheet on this page does not draw the pictures. They are in the .xlsx that you save, and under Jobs.",
  },
  {
    pictures: "words",
    words:
      "The spreadsheet did not draw the pictures. Their words stand in their place; the pictures are under Jobs.",
  },
  {
    charts: "kept",
    words:
      "The spreadsheet on this page does not draw the chart. It is in the .xlsx that you save, and under Margins.",
  },
  {
    charts: "none",
    words:
      "The spreadsheet made no chart. Its numbers stand on the sheet; the bars are under Margins.",
  },
] as const;

function SheetLink({ name }: { readonly name: string }) {
  const styles = useStyles();
  const { goTo } = usePane();
  return (
    <Link
      as="button"
      inline
      className={styles.link}
      onClick={() => goTo({ sheet: name, row: 0, column: 0 })}
    >
      {name}
    </Link>
  );
}
