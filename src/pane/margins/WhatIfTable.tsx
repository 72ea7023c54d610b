/** Figures as estimated beside what they would come to. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { WhatIfTable as JobsIf } from "../../app/pricing/whatIfJobs";
import { cents, type Cents } from "../../core/base/units";
import type { Currency } from "../../core/money/currency";
import { moneyText } from "../../core/money/writeMoney";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { pointsWords, shareWords } from "./marginWords";

const useStyles = makeStyles({
  table: {
    width: "100%",
    borderCollapse: "collapse",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    "& th": { padding: "2px 0", fontWeight: tokens.fontWeightRegular, textAlign: "left" },
    "& thead th:not(:first-child)": { textAlign: "right" },
    "& td": { padding: `2px 0 2px ${tokens.spacingHorizontalXS}` },
    // A very large amount breaks rather than widen the view.
    "& tbody td": { whiteSpace: "normal", overflowWrap: "anywhere" },
    "& tbody tr": { borderTop: `1px solid ${tokens.colorNeutralStroke3}` },
  },
});

export type WhatIfTableProps = {
  readonly before: JobsIf["before"];
  readonly after: JobsIf["after"];
  readonly currency: Currency;
};

export function WhatIfTable({ before, after, currency }: WhatIfTableProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const money = (name: string, from: Cents, to: Cents): readonly string[] => {
    const by = cents(to - from);
    const more = `${by > 0 ? "+" : ""}${moneyText(by, currency)}`;
    return [name, moneyText(from, currency), moneyText(to, currency), more];
  };
  const share = (name: string, from: number | null, to: number | null): readonly string[] => [
    name,
    shareWords(from),
    shareWords(to),
    pointsWords(from, to).replace(" points", " pt"),
  ];
  const rows = [
    money("Cost", before.cost, after.cost),
    money("Price", before.price, after.price),
    money("Profit", before.profit, after.profit),
    share("Markup", before.markup, after.markup),
    share("Margin", before.margin, after.margin),
  ];
  return (
    <table className={styles.table}>
      <thead>
        <tr>
          <th scope="col">
            <span className={shared.hidden}>Figure</span>
          </th>
          <th scope="col">Estimated</th>
          <th scope="col">Then</th>
          <th scope="col">Change</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, from, to, by]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className={shared.number}>{from}</td>
            <td className={mergeClasses(shared.number, shared.strong)}>{to}</td>
            <td className={shared.number}>{by}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
