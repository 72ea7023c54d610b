/** Figures with their names, as many beside one another as there is room for; the numbers on the right. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  figures: {
    display: "grid",
    gridTemplateColumns: "repeat(auto-fill, minmax(126px, 1fr))",
    gap: `${tokens.spacingVerticalXXS} ${tokens.spacingHorizontalL}`,
    margin: 0,
  },
  wide: { gridColumn: "1 / -1" },
  oneColumn: { gridTemplateColumns: "1fr" },
  figure: {
    display: "flex",
    flexWrap: "wrap",
    alignItems: "baseline",
    justifyContent: "space-between",
    columnGap: tokens.spacingHorizontalS,
  },
  value: { margin: "0 0 0 auto", fontWeight: tokens.fontWeightSemibold },
});

export type FigureOf = {
  readonly name: string;
  readonly value: ReactNode;
  /** Such as `profit / price`. */
  readonly formula?: string;
  /** In a row of its own: its name or its value may be long. */
  readonly isWide?: boolean;
};

export type FigureListProps = {
  readonly figures: readonly FigureOf[];
  /** Each figure in a row of its own. */
  readonly oneColumn?: boolean;
};

export function FigureList({ figures, oneColumn = false }: FigureListProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  return (
    <dl className={mergeClasses(styles.figures, oneColumn && styles.oneColumn)}>
      {figures.map(({ name, value, formula, isWide = false }) => (
        <div key={name} className={mergeClasses(styles.figure, isWide && styles.wide)}>
          <dt className={shared.small}>
            {name}
            {formula === undefined ? null : ` = ${formula}`}
          </dt>
          <dd className={mergeClasses(shared.number, styles.value)}>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
