/** An order in two parts: what must go out now, and what can wait for the next day that orders go out. */
import { Button, Field, Input, Radio, RadioGroup } from "@fluentui/react-components";
import { useState } from "react";
import { useSharedStyles } from "../parts/parts.styles";
import { Notice } from "../parts/Notice";
import type { OrderText } from "./orderText";
import { serialOf } from "./dateField";
import { orderParts, type MadeOrder, type OrderPart } from "./useOrder";

export type SplitPartProps = {
  readonly made: MadeOrder;
  readonly text: OrderText;
  readonly part: OrderPart;
  readonly onPart: (part: OrderPart) => void;
  readonly onSplit: (nextOrderDay: number | null) => void;
};

export function SplitPart({ made, text, part, onPart, onSplit }: SplitPartProps) {
  const shared = useSharedStyles();
  const [typed, setTyped] = useState("");
  const day = serialOf(typed);
  const { whole, inTwo } = made.worked;
  return (
    <div className={shared.stack}>
      <Field label="The next day that orders go out">
        <Input type="date" value={typed} onChange={(_, { value }) => setTyped(value)} />
      </Field>
      <div>
        <Button disabledFocusable={day === null} onClick={() => onSplit(day)}>
          Split the order by that day
        </Button>
      </div>
      {inTwo === null ? null : (
        <>
          <RadioGroup
            aria-label="Which part of the order"
            value={part}
            onChange={(_, { value }) =>
              onPart(orderParts.find((each) => each === value) ?? "whole")
            }
          >
            <Radio value="whole" label={`All at once: ${text.money(whole.total)}`} />
            <Radio value="now" label={`What must go out now: ${text.money(inTwo.now.total)}`} />
            <Radio value="later" label={`What can wait: ${text.money(inTwo.canWait.total)}`} />
          </RadioGroup>
          <Notice level="note" quiet>
            {inTwo.costsMore === 0
              ? "Two orders cost the same as one."
              : `Two orders cost ${text.money(inTwo.costsMore)} more than one.`}
            {part === "whole" ? "" : " All parts below show this part alone."}
          </Notice>
        </>
      )}
    </div>
  );
}
