/** A row of the kit book: what it is, its cells, and what is wrong with them. */
import { mergeClasses } from "@fluentui/react-components";
import { LevelIcon } from "../parts/LevelIcon";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";
import { useBookStyles } from "./book.styles";
import type { ShownRow } from "./rowsOfType";

/** Columns of words; all others are formulas. */
const isWords: ReadonlySet<string> = new Set([
  "bag",
  "unit",
  "note",
  "basis",
  "level",
  "message",
  "match",
]);

export function RowCard({ row }: { readonly row: ShownRow }) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  return (
    <li className={mergeClasses(shared.card, styles.row)}>
      <div className={styles.head}>
        <span className={mergeClasses(shared.strong, styles.name)}>{row.title}</span>
        {row.place === null ? (
          <span className={shared.small}>row {row.number}</span>
        ) : (
          <PlaceButton place={row.place} of={`row ${row.number}`} />
        )}
      </div>
      {row.findings.map((finding) => (
        <div key={finding.message} className={styles.fault}>
          <LevelIcon level={finding.level} />
          <span>
            <span className={shared.hidden}>{finding.level}: </span>
            {finding.message}
          </span>
        </div>
      ))}
      <dl className={mergeClasses(styles.cells, styles.cell)}>
        {row.cells.map(({ column, label, text }) => (
          <Cell key={column} label={label} text={text} isFormula={!isWords.has(column)} />
        ))}
      </dl>
    </li>
  );
}

type CellProps = { readonly label: string; readonly text: string; readonly isFormula: boolean };

function Cell({ label, text, isFormula }: CellProps) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  return (
    <>
      <dt className={shared.small}>{label}</dt>
      <dd className={mergeClasses(styles.cell, isFormula ? styles.code : shared.small)}>{text}</dd>
    </>
  );
}
