/** What hangs in each opening of a job: weight, loads, and whether they are within what was entered. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { WorkbookPrices } from "../../app/pricing/priceWorkbook";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { measureStyleIn } from "../../app/settings";
import { measureText } from "../../core/measures/writeMeasure";
import {
  loadCaution,
  loadKinds,
  loadMethod,
  type LoadKind,
} from "../../core/pricing/loads/loadCheck";
import type { OpeningLoads } from "../../core/pricing/loads/openingLoads";
import { loadText, verdictWords, worstOf } from "../../core/pricing/loads/worstLoads";
import { Disclosure } from "../parts/Disclosure";
import { LevelIcon } from "../parts/LevelIcon";
import { Notice } from "../parts/Notice";
import { ProgressLine } from "../parts/ProgressLine";
import { useSharedStyles } from "../parts/parts.styles";
import { counted, countText, weightText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { useMore } from "../parts/useMore";
import { usePane } from "../state/paneContext";
import { Line } from "./RollUpPart";
import { useJobLoads } from "./useJobLoads";

const useStyles = makeStyles({
  opening: {
    padding: `${tokens.spacingVerticalS} 0`,
    ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke2}` },
  },
  head: {
    display: "flex",
    alignItems: "center",
    gap: tokens.spacingHorizontalS,
    margin: 0,
    overflowWrap: "anywhere",
  },
});

const kindWords: Readonly<Record<LoadKind, string>> = {
  trolley: "Largest load on a trolley",
  hanger: "Largest load on a hanger",
  track: "Bending of the track",
  joint: "Bending at a joint",
  deflection: "Sinking of the track",
};

const firstOpenings = 6;

export type LoadsPartProps = {
  readonly takeOff: WorkbookTakeOff;
  readonly prices: WorkbookPrices;
  readonly job: string;
};

export function LoadsPart({ takeOff, prices, job }: LoadsPartProps) {
  const shared = useSharedStyles();
  const style = measureStyleIn(usePane().state.settings);
  const { loads, entered, progress } = useJobLoads(takeOff, prices, job);
  const openings = loads?.openings ?? [];
  const more = useMore(openings, firstOpenings);
  const over = openings.filter(({ checked }) => checked.verdict === "over").length;
  return (
    <>
      <Notice level="warn" quiet>
        {loadCaution}
      </Notice>
      <div className={shared.small}>{loadMethod(style)}</div>
      {loads === null ? <ProgressLine name="Working out hanging loads" done={progress} /> : null}
      {loads !== null && openings.length === 0 ? (
        <div className={shared.small}>No opening of this job hangs from a track.</div>
      ) : null}
      {loads?.findings.some(({ code }) => code === "no-capacities") === true ? (
        <div className={shared.small}>
          Nothing is checked: no capacities are entered. Enter on the rates sheet what your supplier
          gives.
        </div>
      ) : null}
      {entered.map(({ code, level, message }) => (
        <Notice key={`${code} ${message}`} level={level} quiet>
          {message}
        </Notice>
      ))}
      {over === 0 ? null : (
        <Notice level="stop" quiet>
          {counted(over, "opening")} over what is entered: not counted, priced or ordered.
        </Notice>
      )}
      <ul className={shared.list} aria-label="Hanging openings">
        {more.shown.map((one, index) => (
          <Opening key={`${one.opening.mark} ${index}`} loads={one} />
        ))}
      </ul>
      {more.left === 0 ? null : (
        <SmallButton onClick={more.showMore}>Show more ({countText(more.left)})</SmallButton>
      )}
    </>
  );
}

const verdictIcons = { over: "stop", "not checked": "note", within: null } as const;

function Opening({ loads: one }: { readonly loads: OpeningLoads }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const style = measureStyleIn(usePane().state.settings);
  const { opening, leaves, leafWeight, parts, loads, checked } = one;
  const icon = verdictIcons[checked.verdict];
  const alike = opening.quantity === 1 ? "" : `, ${countText(opening.quantity)} alike`;
  return (
    <li className={styles.opening}>
      <h3 className={mergeClasses(shared.subheading, styles.head)}>
        {icon === null ? null : <LevelIcon level={icon} />}
        {opening.mark}: {checked.verdict}
      </h3>
      <div className={shared.small}>{`${opening.type}${alike}`}</div>
      <ul className={shared.list}>
        <Line
          label={leaves === 1 ? "The leaf" : `Each of ${leaves} leaves`}
          words={leafWeight === null ? `no weight is given for ${parts.notWeighed.join(", ")}` : ""}
          value={leafWeight === null ? "not known" : weightText(leafWeight, style)}
        />
        {loadKinds.flatMap((kind) => {
          const worst = worstOf(checked.checks, kind);
          if (worst === null) return [];
          return [
            <Line
              key={kind}
              label={kindWords[kind]}
              words={`${worst.where}; ${verdictWords(worst, style)}`}
              value={loadText(worst.load, worst.unit, style)}
            />,
          ];
        })}
        {loads === null || loads.beyond === 0 ? null : (
          <Line
            label="Past the last hanger"
            words="over: nothing is known to carry the track there"
            value={measureText(loads.beyond, "length", style, 1)}
          />
        )}
      </ul>
      {loads === null
        ? checked.findings.map(({ code, message }) => (
            <div key={code} className={shared.small}>
              {message}
            </div>
          ))
        : null}
      <Disclosure label={`How ${opening.mark} is weighed`}>
        {() => (
          <ul className={shared.list}>
            {parts.parts.map(({ name, weight, because }) => (
              <Line
                key={name}
                label={name}
                words={because}
                value={weight === null ? "not known" : weightText(weight, style)}
              />
            ))}
            <Line isSum label="All leaves" words="" value={weightText(parts.weight, style)} />
          </ul>
        )}
      </Disclosure>
    </li>
  );
}
