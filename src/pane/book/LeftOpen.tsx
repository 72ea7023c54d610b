/** What the kit book leaves open, and whether its bolts fit: every finding of the check by what it is about. */
import { mergeClasses } from "@fluentui/react-components";
import { useCallback } from "react";
import { bookCheckDrawing } from "../../app/kitbook/bookSheets";
import { checkKitBook, type KitBookCheck } from "../../app/kitbook/checkKitBook";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import type { Finding } from "../../core/base/finding";
import { connectionFindings, joinedWords } from "../../core/bookcheck/connectionFindings";
import type { BookConnection } from "../../core/bookcheck/connections";
import { Disclosure } from "../parts/Disclosure";
import { useSharedStyles } from "../parts/parts.styles";
import { counted } from "../parts/quantities";
import { useBookStyles } from "./book.styles";
import { Folds } from "./Folds";
import { MoreList } from "./MoreList";
import { RowPlace } from "./RowPlace";
import { useSteps } from "./useSteps";
import { Worked } from "./Worked";
import { WriteOne } from "./WriteOne";

/** What each group is about, and which findings it holds. */
const groups: readonly { readonly title: string; readonly holds: (code: string) => boolean }[] = [
  {
    title: "Sizes without a chart entry",
    holds: (code) => code.startsWith("chart-gap"),
  },
  {
    title: "Items without price or weight, or never used",
    holds: (code) => code.startsWith("item-"),
  },
  {
    title: "Rows that do nothing",
    holds: (code) => ["part-never-needed", "limit-never-speaks", "row-not-seen"].includes(code),
  },
  {
    title: "Sizes and charts that nothing reads",
    holds: (code) => ["size-unused", "chart-unused"].includes(code),
  },
  {
    title: "Bolts, washers and nuts",
    holds: (code) => Object.hasOwn(connectionFindings, code),
  },
];

export function LeftOpen({ hand }: { readonly hand: KitBookAtHand }) {
  const steps = useSteps(useCallback(() => checkKitBook(hand), [hand]));
  return (
    <Worked name="Checking the kit book" steps={steps}>
      {(check: KitBookCheck) => (
        <>
          {groups.map(({ title, holds }) => (
            <Group
              key={title}
              title={title}
              findings={check.findings.filter(({ code }) => holds(code))}
            />
          ))}
          <Bolts connections={check.connections.connections} />
          <WriteOne label="Write the check as a sheet" draw={() => bookCheckDrawing(hand, check)} />
        </>
      )}
    </Worked>
  );
}

type GroupProps = { readonly title: string; readonly findings: readonly Finding[] };

function Group({ title, findings }: GroupProps) {
  const shared = useSharedStyles();
  if (findings.length === 0) return <div>{title}: none.</div>;
  return (
    <Disclosure
      label={
        <span className={shared.strong}>
          {title} ({findings.length})
        </span>
      }
    >
      {() => (
        <div className={shared.stack}>
          <Folds findings={findings} />
        </div>
      )}
    </Disclosure>
  );
}

/** Every bolt with what is on it, so that a person sees what was checked. */
function Bolts({ connections }: { readonly connections: readonly BookConnection[] }) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  if (connections.length === 0) return null;
  return (
    <Disclosure
      label={<span className={shared.strong}>{counted(connections.length, "bolt")} looked at</span>}
    >
      {() => (
        <MoreList items={connections}>
          {(connection) => (
            <li
              key={`${connection.source.number} ${connection.types.join()}`}
              className={mergeClasses(shared.card, styles.row)}
            >
              <div className={styles.head}>
                <span className={mergeClasses(shared.strong, styles.name)}>
                  {connection.items.join(" + ")}
                </span>
                <span className={styles.end}>
                  {connection.faults.length === 0 ? "fits" : "see above"}
                </span>
              </div>
              <div className={shared.small}>
                Joins {joinedWords(connection.joined)}; {connection.types.join(", ")}
              </div>
              <div>
                <RowPlace source={connection.source} />
              </div>
            </li>
          )}
        </MoreList>
      )}
    </Disclosure>
  );
}
