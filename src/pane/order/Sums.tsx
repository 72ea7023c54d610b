/** Names and amounts, one a row. */
import { mergeClasses } from "@fluentui/react-components";
import { useSharedStyles } from "../parts/parts.styles";
import { useOrderStyles } from "./order.styles";

export type Sum = { readonly name: string; readonly value: string; readonly isTotal?: boolean };

export function Sums({ sums }: { readonly sums: readonly Sum[] }) {
  const styles = useOrderStyles();
  const shared = useSharedStyles();
  return (
    <dl className={styles.sums}>
      {sums.map(({ name, value, isTotal = false }) => (
        <SumRow key={name} {...{ name, value, isTotal, shared, styles }} />
      ))}
    </dl>
  );
}

type SumRowProps = Required<Sum> & {
  readonly shared: ReturnType<typeof useSharedStyles>;
  readonly styles: ReturnType<typeof useOrderStyles>;
};

function SumRow({ name, value, isTotal, shared, styles }: SumRowProps) {
  const total = isTotal && styles.total;
  return (
    <>
      <dt className={mergeClasses(total)}>{name}</dt>
      <dd className={mergeClasses(styles.value, shared.number, total)}>{value}</dd>
    </>
  );
}
