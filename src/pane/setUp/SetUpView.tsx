/** How the workbook is read and written: columns, kit book, items, units and money. */
import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { WorkbookTakeOff } from "../../app/takeOffWorkbook";
import { Disclosure } from "../parts/Disclosure";
import { useSharedStyles } from "../parts/parts.styles";
import { ColumnsPart } from "./ColumnsPart";
import { ItemsPart } from "./ItemsPart";
import { KitBookPart } from "./KitBookPart";
import { MeasuresPart } from "./MeasuresPart";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  view: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalS },
  content: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalS,
    padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalM} ${tokens.spacingVerticalM}`,
  },
});

export function SetUpView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const styles = useStyles();
  return (
    <div className={styles.view}>
      <Part title="Columns of the schedule" startsOpen>
        <ColumnsPart inputs={takeOff.inputs} />
      </Part>
      <Part title="Kit book">
        <KitBookPart takeOff={takeOff} />
      </Part>
      <Part title="Items and costs">
        <ItemsPart inputs={takeOff.inputs} />
      </Part>
      <Part title="Lengths and money">
        <MeasuresPart />
      </Part>
    </div>
  );
}

type PartProps = {
  readonly title: string;
  readonly startsOpen?: boolean;
  readonly children: ReactNode;
};

function Part({ title, startsOpen = false, children }: PartProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  return (
    <section className={shared.card} aria-label={title}>
      <Disclosure
        isHeading
        startsOpen={startsOpen}
        label={<span className={shared.subheading}>{title}</span>}
      >
        {() => <div className={styles.content}>{children}</div>}
      </Disclosure>
    </section>
  );
}
