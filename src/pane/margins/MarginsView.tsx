/** Margins: what each job costs, is sold for and leaves, and what would hurt it. */
import { useMemo, useState } from "react";
import { actualsReport } from "../../app/pricing/jobActuals";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { jobKey } from "../../core/takeoff/takeOff";
import { Gone } from "../jobs/Gone";
import { Notice } from "../parts/Notice";
import { Part } from "../parts/Part";
import { ProgressLine } from "../parts/ProgressLine";
import { useSharedStyles } from "../parts/parts.styles";
import { ActualsPart } from "./ActualsPart";
import { AllJobs } from "./AllJobs";
import { AllSheetsPart } from "./AllSheetsPart";
import { AllWhatIfPart } from "./AllWhatIfPart";
import { FindingList } from "./FindingList";
import type { JobOrder } from "./jobOrder";
import { JobView } from "./JobView";
import { useJobWork } from "./jobWork";
import { NoRates } from "./NoRates";
import { usePrices, type PricesHandle } from "./usePrices";

export function MarginsView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const shared = useSharedStyles();
  const handle = usePrices(takeOff);
  const { prices, progress, fault } = handle;
  return (
    <div className={shared.stack}>
      {fault === null ? null : <Notice level="stop">{fault.message}</Notice>}
      {prices === null && fault === null ? (
        <>
          <div role="status">Pricing the jobs…</div>
          <ProgressLine name="Pricing the jobs" done={progress} />
        </>
      ) : null}
      {prices?.ratesSheet === null ? <NoRates jobs={prices.jobs.map(({ job }) => job)} /> : null}
      {prices === null ? null : <Jobs takeOff={takeOff} prices={prices} handle={handle} />}
    </div>
  );
}

type JobsProps = {
  readonly takeOff: WorkbookTakeOff;
  readonly prices: NonNullable<PricesHandle["prices"]>;
  readonly handle: PricesHandle;
};

/** All jobs, or the one that is open. */
function Jobs({ takeOff, prices, handle }: JobsProps) {
  const [order, setOrder] = useState<JobOrder>("risk");
  const [open, setOpen] = useState<string | null>(null);
  const [left, setLeft] = useState<string | null>(null);
  const { workOn, change, onAll, changeOnAll } = useJobWork();
  const report = useMemo(() => actualsReport(prices.actuals, takeOff.inputs), [prices, takeOff]);
  if (prices.jobs.length === 0) {
    return <p>No job yet. Each row of the schedule names the job it belongs to.</p>;
  }
  const goBack = (): void => {
    setLeft(open);
    setOpen(null);
  };
  if (open !== null) {
    const job = prices.jobs.find((each) => jobKey(each.job) === open);
    const row = prices.margins.rows.find((each) => jobKey(each.job) === open);
    if (job === undefined || row === undefined) return <Gone what="This job" onBack={goBack} />;
    return (
      <JobView
        key={open}
        takeOff={takeOff}
        prices={prices}
        job={job}
        row={row}
        work={workOn(open)}
        onWork={(changed) => change(open, changed)}
        onRanges={handle.changeRanges}
        onBack={goBack}
      />
    );
  }
  return (
    <AllJobs margins={prices.margins} order={order} onOrder={setOrder} left={left} onOpen={setOpen}>
      {prices.findings.length === 0 ? null : (
        <Part title="What to know">{() => <FindingList ofAll findings={prices.findings} />}</Part>
      )}
      <Part title="What if, on all jobs">
        {() => <AllWhatIfPart jobs={prices.jobs} changes={onAll} onChange={changeOnAll} />}
      </Part>
      <Part title="Actual against estimate">
        {() => <ActualsPart report={report} inputs={takeOff.inputs} />}
      </Part>
      <Part title="Sheets">{() => <AllSheetsPart takeOff={takeOff} prices={prices} />}</Part>
    </AllJobs>
  );
}
