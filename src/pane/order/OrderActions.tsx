/** What is done with an order that was worked out: kept as a draft, or its sheets written only. */
import { Button, Field, makeStyles, Select } from "@fluentui/react-components";
import { useState } from "react";
import type { JobsOrder } from "../../app/orders/orderJobs";
import type { OrderRecord } from "../../core/purchasing/books/orderRecord";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  actions: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalS },
});

export type OrderActionsProps = {
  readonly order: JobsOrder;
  /** Those that it may take the place of. */
  readonly drafts: readonly OrderRecord[];
  readonly canAct: boolean;
  /** Under the next number, or in the place of a draft. */
  readonly onKeep: (order: JobsOrder, number: string | null) => void;
  readonly onWrite: (order: JobsOrder) => void;
};

export function OrderActions({ order, drafts, canAct, onKeep, onWrite }: OrderActionsProps) {
  const styles = useStyles();
  const [chosen, setChosen] = useState<string | null>(null);
  const alike = drafts.findLast((draft) => isForSameJobs(draft, order))?.number ?? "";
  const place = drafts.some(({ number }) => number === chosen) || chosen === "" ? chosen : alike;
  return (
    <div className={styles.actions}>
      {drafts.length === 0 ? null : (
        <Field label="Keep it as">
          <Select value={place ?? ""} onChange={(_, { value }) => setChosen(value)}>
            <option value="">a new draft</option>
            {drafts.map(({ number }) => (
              <option key={number} value={number}>
                {number}, in the place of that draft
              </option>
            ))}
          </Select>
        </Field>
      )}
      <Button
        appearance="primary"
        size="large"
        disabledFocusable={!canAct}
        onClick={() => onKeep(order, place === "" ? null : place)}
      >
        Keep as a draft order
      </Button>
      <Button disabledFocusable={!canAct} onClick={() => onWrite(order)}>
        Only write its sheets
      </Button>
    </div>
  );
}

/** Then it is likely the same order worked out again; any other draft would be lost. */
const isForSameJobs = ({ jobs }: OrderRecord, { plan }: JobsOrder): boolean =>
  jobs.map(({ job }) => job).join("\n") === plan.jobs.map(({ job }) => job).join("\n");
