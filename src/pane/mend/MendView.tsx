/** Everything that wants mending, what stops a count first. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { CheckmarkCircleRegular } from "@fluentui/react-icons/svg/checkmark-circle";
import { useMemo } from "react";
import type { Finding, FindingLevel } from "../../core/base/finding";
import { Disclosure } from "../parts/Disclosure";
import { LevelIcon } from "../parts/LevelIcon";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { useMore } from "../parts/useMore";
import { foldFindings, type FoldedLevel } from "./foldFindings";
import { FoldedFinding } from "./FoldedFinding";
import { tokens } from "../parts/tokens";
import { SmallButton } from "../parts/SmallButton";

const useStyles = makeStyles({
  view: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalM },
  level: { display: "flex", alignItems: "center", gap: tokens.spacingHorizontalS },
  levelWords: { flexGrow: 1 },
  count: { color: tokens.colorNeutralForeground2, fontWeight: tokens.fontWeightRegular },
  list: { paddingTop: tokens.spacingVerticalXS },
  nothing: {
    display: "flex",
    flexDirection: "column",
    alignItems: "center",
    gap: tokens.spacingVerticalS,
    padding: `${tokens.spacingVerticalXXXL} ${tokens.spacingHorizontalL}`,
    textAlign: "center",
  },
  nothingIcon: { color: tokens.colorStatusSuccessForeground1, fontSize: "40px", lineHeight: 0 },
});

const titles: Readonly<Record<FindingLevel, string>> = {
  stop: "Mend first: not counted",
  warn: "Look at: counted, likely wrong",
  note: "Good to know",
};

const firstFolds = 30;

export function MendView({ findings }: { readonly findings: readonly Finding[] }) {
  const styles = useStyles();
  const levels = useMemo(() => foldFindings(findings), [findings]);
  if (levels.length === 0) {
    return (
      <div className={styles.nothing}>
        <span aria-hidden className={styles.nothingIcon}>
          <CheckmarkCircleRegular />
        </span>
        Nothing to mend.
      </div>
    );
  }
  return (
    <div className={styles.view}>
      {levels.map((level) => (
        <Level key={level.level} {...level} />
      ))}
    </div>
  );
}

function Level({ level, folds, count }: FoldedLevel) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { shown, left, showMore } = useMore(folds, firstFolds);
  return (
    <section aria-label={titles[level]}>
      <Disclosure
        isHeading
        startsOpen={level !== "note"}
        label={
          <span className={mergeClasses(shared.subheading, styles.level)}>
            <LevelIcon level={level} />
            <span className={styles.levelWords}>{titles[level]}</span>
            <span className={styles.count}>{countText(count)}</span>
          </span>
        }
      >
        {() => (
          <ul className={mergeClasses(shared.list, shared.stack, styles.list)}>
            {shown.map((fold) => (
              <FoldedFinding key={fold.message} level={level} fold={fold} />
            ))}
            {left === 0 ? null : (
              <li>
                <SmallButton onClick={showMore}>Show more ({countText(left)})</SmallButton>
              </li>
            )}
          </ul>
        )}
      </Disclosure>
    </section>
  );
}
