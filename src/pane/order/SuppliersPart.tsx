/** What each supplier is to send, what that comes to, and by when it must be ordered. */
import { mergeClasses } from "@fluentui/react-components";
import type { JobsOrder } from "../../app/orders/orderJobs";
import { cents } from "../../core/base/units";
import type { Deadline } from "../../core/purchasing/orders/dates";
import type { OrderCharge } from "../../core/purchasing/orders/orderPlan";
import { sizedKey } from "../../core/purchasing/sizedItem";
import { useSharedStyles } from "../parts/parts.styles";
import { counted, countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { useMore } from "../parts/useMore";
import { DeadlineMark } from "./DeadlineMark";
import { useOrderStyles } from "./order.styles";
import type { OrderText } from "./orderText";
import { Sums } from "./Sums";

type SuppliersPartProps = { readonly order: JobsOrder; readonly text: OrderText };

export function SuppliersPart({ order, text }: SuppliersPartProps) {
  const shared = useSharedStyles();
  return (
    <div className={shared.stack}>
      {order.plan.charges.map((charge) => (
        <Supplier key={charge.supplier} {...{ charge, order, text }} />
      ))}
    </div>
  );
}

const firstLines = 30;

function Supplier({ charge, order, text }: SuppliersPartProps & { readonly charge: OrderCharge }) {
  const styles = useOrderStyles();
  const shared = useSharedStyles();
  const { supplier, goods, madeUp, freight } = charge;
  const bought = order.plan.lines.flatMap((line) =>
    line.packs
      .filter(({ offer }) => offer.supplier === supplier)
      .map((packs, index) => ({ line, packs, key: `${sizedKey(line)} ${index}` })),
  );
  const { shown, left, showMore } = useMore(bought, firstLines, 100);
  const first = earliest(bought.map(({ packs }) => packs.deadline));
  return (
    <section aria-label={supplier}>
      <h3 className={shared.subheading}>{supplier}</h3>
      <DeadlineMark deadline={first} />
      <ul className={shared.list}>
        {shown.map(({ line, packs, key }) => (
          <li key={key} className={mergeClasses(styles.row, styles.item)}>
            <span>
              {[text.describe(line.item), text.size(line)].filter((each) => each !== "").join(", ")}
            </span>
            <span className={shared.number}>{text.money(packs.cost)}</span>
            <span className={shared.small}>
              {counted(packs.count, "pack")} of {countText(packs.offer.packSize)} at{" "}
              {text.money(packs.offer.price)}
            </span>
            <DeadlineMark deadline={packs.deadline} />
          </li>
        ))}
      </ul>
      {left === 0 ? null : (
        <SmallButton onClick={showMore}>Show more ({countText(left)})</SmallButton>
      )}
      <Sums
        sums={[
          { name: "Goods", value: text.money(goods) },
          ...(madeUp === 0
            ? []
            : [{ name: "Made up to the least order", value: text.money(madeUp) }]),
          ...(freight === 0 ? [] : [{ name: "Freight", value: text.money(freight) }]),
          {
            name: `Total of ${supplier}`,
            value: text.money(cents(goods + madeUp + freight)),
            isTotal: true,
          },
        ]}
      />
    </section>
  );
}

const earliest = (deadlines: readonly (Deadline | null)[]): Deadline | null =>
  deadlines.reduce(
    (first, each) =>
      each !== null && (first === null || each.orderBy < first.orderBy) ? each : first,
    null,
  );
