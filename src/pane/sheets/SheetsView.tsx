/** Writing sheets: which kinds, of which jobs, how, and what came of it. */
import { makeStyles, Radio, RadioGroup, Switch } from "@fluentui/react-components";
import { useId, useMemo, useState } from "react";
import { packingKinds } from "../../app/writing/packingLists";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { jobKey } from "../../core/takeoff/takeOff";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { counted } from "../parts/quantities";
import { usePane } from "../state/paneContext";
import { JobChoice } from "./JobChoice";
import { KindChoice, type SheetKind } from "./KindChoice";
import { LabelPaper } from "./LabelPaper";
import { Outcome } from "./Outcome";
import { useChanges } from "./useChanges";
import { useWriting } from "./useWriting";
import { WriteBar } from "./WriteBar";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  view: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalM },
  options: { padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalXS}` },
});

export function SheetsView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const layoutId = useId();
  const { state, change } = usePane();
  const { settings } = state;
  const { jobs } = takeOff.estimate;
  // What is left out is remembered, so that a job that comes later is in.
  const [leftOut, setLeftOut] = useState<ReadonlySet<string>>(new Set());
  const [kinds, setKinds] = useState<ReadonlySet<SheetKind>>(new Set(["hardware"]));
  const chosen = useMemo(
    () => jobs.filter(({ job }) => !leftOut.has(jobKey(job))),
    [jobs, leftOut],
  );
  const { writing, write, cancel } = useWriting();
  const changes = useChanges(chosen, writing.kind === "done");
  const uncounted = chosen.reduce((sum, job) => sum + job.uncounted.length, 0);
  return (
    <div className={styles.view}>
      <Outcome writing={writing} />
      <KindChoice kinds={kinds} onKinds={setKinds} />
      {kinds.has("labels") ? <LabelPaper /> : null}
      <JobChoice jobs={jobs} leftOut={leftOut} onLeaveOut={setLeftOut} />
      <section>
        <h2 id={layoutId} className={shared.subheading}>
          How
        </h2>
        <div className={styles.options}>
          <RadioGroup
            aria-labelledby={layoutId}
            value={settings.sheetPerJob ? "each" : "one"}
            onChange={(_, { value }) => change({ sheetPerJob: value === "each" })}
          >
            <Radio value="each" label="A sheet for each job" />
            <Radio value="one" label="One sheet for all jobs" />
          </RadioGroup>
          {kinds.has("hardware") ? (
            <Switch
              label="With costs"
              checked={settings.withCosts}
              onChange={(_, { checked }) => change({ withCosts: checked })}
            />
          ) : null}
        </div>
      </section>
      {uncounted > 0 ? (
        <Notice level="warn" quiet>
          {counted(uncounted, "opening is", "openings are")} not counted. The sheets will say so.
        </Notice>
      ) : null}
      <WriteBar
        writing={writing}
        changes={kinds.has("hardware") ? changes : ""}
        action={`Write sheets for ${chosen.length === jobs.length ? "all jobs" : counted(chosen.length, "job")}`}
        canWrite={chosen.length > 0 && kinds.size > 0 && state.phase === "ready"}
        onWrite={() =>
          write(takeOff, {
            hardware: kinds.has("hardware"),
            kinds: packingKinds.filter((kind) => kinds.has(kind)),
            isIn: ({ job }) => !leftOut.has(jobKey(job)),
          })
        }
        onCancel={cancel}
      />
    </div>
  );
}
