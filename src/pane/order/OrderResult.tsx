/** An order that was worked out, whole or the part of it that the person chose. */
import { useMemo, useState, type ReactNode } from "react";
import type { JobsOrder } from "../../app/orders/orderJobs";
import { Notice } from "../parts/Notice";
import { Part } from "../parts/Part";
import { counted } from "../parts/quantities";
import { CutPart } from "./CutPart";
import { FindingsPart } from "./FindingsPart";
import { LinesPart } from "./LinesPart";
import { orderText } from "./orderText";
import { SplitPart } from "./SplitPart";
import { Summary } from "./Summary";
import { SuppliersPart } from "./SuppliersPart";
import { partOf, type MadeOrder, type OrderPart } from "./useOrder";

export type OrderResultProps = {
  readonly made: MadeOrder;
  readonly isStale: boolean;
  /** This workbook's name. */
  readonly own: string;
  readonly onSplit: (nextOrderDay: number | null) => void;
  /** What can be done with the part that is shown. */
  readonly children: (shown: JobsOrder) => ReactNode;
};

export function OrderResult({ made, isStale, own, onSplit, children }: OrderResultProps) {
  const [chosen, setChosen] = useState<OrderPart>("whole");
  const part = made.worked.inTwo === null ? "whole" : chosen;
  const order = useMemo(() => partOf(made, part), [made, part]);
  const text = useMemo(() => orderText(order), [order]);
  const { plan, findings } = order;
  const doubts = findings.filter(({ finding }) => finding.level !== "note").length;
  const bars = plan.cutPlans.reduce((sum, cut) => sum + cut.bars.length, 0);
  return (
    <>
      {isStale ? (
        <Notice level="warn">
          The workbook or your choice has changed since. Work the order out again before you send
          it.
        </Notice>
      ) : null}
      <Summary order={order} text={text} />
      {children(order)}
      {findings.length === 0 ? null : (
        <Part
          title="Findings"
          sum={doubts === 0 ? counted(findings.length, "note") : `${doubts} to look at`}
          startsOpen={findings.some(({ finding }) => finding.level === "stop")}
        >
          {() => <FindingsPart findings={findings} own={own} />}
        </Part>
      )}
      <Part title="Lines" sum={counted(plan.lines.length, "line")}>
        {() => <LinesPart order={order} text={text} />}
      </Part>
      <Part title="By supplier" sum={counted(plan.charges.length, "supplier")}>
        {() => <SuppliersPart order={order} text={text} />}
      </Part>
      {plan.cutPlans.length === 0 ? null : (
        <Part title="Cut list" sum={counted(bars, "bar")}>
          {() => <CutPart order={order} text={text} />}
        </Part>
      )}
      <Part title="Now or later">
        {() => (
          <SplitPart made={made} text={text} part={part} onPart={setChosen} onSplit={onSplit} />
        )}
      </Part>
    </>
  );
}
