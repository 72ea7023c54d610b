/** One job for its owner: from cost to price, what moves it, what may happen, what did happen. */
import { Button } from "@fluentui/react-components";
import { useMemo } from "react";
import { actualsReport } from "../../app/pricing/jobActuals";
import { actualsDrawing } from "../../app/pricing/ownerSheets";
import type { WorkbookPrices } from "../../app/pricing/priceWorkbook";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import type { MarginRow } from "../../core/pricing/marginTable";
import type { OwnerRange } from "../../core/pricing/chances/ownerRanges";
import type { JobPrice } from "../../core/pricing/priceJob";
import { jobKey } from "../../core/takeoff/takeOff";
import { BackButton } from "../jobs/BackButton";
import { Part } from "../parts/Part";
import { useSharedStyles } from "../parts/parts.styles";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import { useAddSheets } from "../sheets/useAddSheets";
import { usePane } from "../state/paneContext";
import { ActualsPart } from "./ActualsPart";
import { AlternatesPart } from "./AlternatesPart";
import { FreightPart } from "./FreightPart";
import { JobHead } from "./JobHead";
import { JobSheetsPart } from "./JobSheetsPart";
import type { JobWork } from "./jobWork";
import { LabourPart } from "./LabourPart";
import { LoadsPart } from "./LoadsPart";
import { RollUpPart } from "./RollUpPart";
import { SimulationPart } from "./SimulationPart";
import { useSimulation } from "./useSimulation";
import { WhatIfPart } from "./WhatIfPart";

export type JobViewProps = {
  readonly takeOff: WorkbookTakeOff;
  readonly prices: WorkbookPrices;
  readonly job: JobPrice;
  readonly row: MarginRow;
  readonly work: JobWork;
  readonly onWork: (changed: Partial<JobWork>) => void;
  readonly onRanges: (ranges: readonly OwnerRange[]) => void;
  readonly onBack: () => void;
};

export function JobView(props: JobViewProps) {
  const { takeOff, prices, job, row, work, onWork, onRanges, onBack } = props;
  const shared = useSharedStyles();
  const simulation = useSimulation();
  const key = jobKey(job.job);
  const findings = useMemo(
    () => prices.findings.filter((finding) => jobKey(finding.job ?? "") === key),
    [prices, key],
  );
  return (
    <div className={shared.stack}>
      <div>
        <BackButton to="All jobs" onBack={onBack} />
        <h2 tabIndex={-1} ref={useFocusOnAppear(true)} className={shared.heading}>
          {job.job}
        </h2>
      </div>
      <JobHead job={job} row={row} findings={findings} />
      <Part title="From cost to price">{() => <RollUpPart rollUp={job.rollUp} />}</Part>
      <Part title="Hours">{() => <LabourPart hours={job.hours} />}</Part>
      <Part title="Weight and freight">
        {() => <FreightPart shipment={job.shipment} freight={job.freight} />}
      </Part>
      <Part title="Hanging loads">
        {() => <LoadsPart takeOff={takeOff} prices={prices} job={job.job} />}
      </Part>
      <Part title="Alternates and options">
        {() => <AlternatesPart job={job.job} alternates={job.alternates} />}
      </Part>
      <Part title="What if">
        {() => (
          <WhatIfPart
            job={job}
            ranges={prices.ranges.ranges}
            typed={work.whatIf}
            onType={(whatIf) => onWork({ whatIf })}
          />
        )}
      </Part>
      <Part title="Chance of missing the target">
        {() => (
          <SimulationPart
            {...simulation}
            job={job}
            ranges={prices.ranges}
            typed={work.simulation}
            onType={(typed) => onWork({ simulation: typed })}
            onRanges={onRanges}
          />
        )}
      </Part>
      <Part title="Actual against estimate">
        {() => <JobActuals takeOff={takeOff} prices={prices} job={key} />}
      </Part>
      <Part title="Sheets and quotation">
        {() => <JobSheetsPart takeOff={takeOff} prices={prices} job={job} />}
      </Part>
    </div>
  );
}

type JobActualsProps = Pick<JobViewProps, "takeOff" | "prices"> & { readonly job: string };

function JobActuals({ takeOff, prices: { actuals }, job }: JobActualsProps) {
  const shared = useSharedStyles();
  const { settings } = usePane().state;
  const { isBusy, add } = useAddSheets();
  const own = useMemo(
    () => actuals.jobs.filter((each) => jobKey(each.job) === job),
    [actuals, job],
  );
  const report = useMemo(
    () => actualsReport({ ...actuals, jobs: own }, takeOff.inputs),
    [actuals, own, takeOff],
  );
  if (report.jobs.length > 0) return <ActualsPart report={report} inputs={takeOff.inputs} />;
  return (
    <>
      <div className={shared.small}>
        When the job is done, type what it really cost, took and used. The sheet lists every cost,
        step and item with its estimate.
      </div>
      <Button
        disabledFocusable={isBusy}
        onClick={() => add(own.map((each) => actualsDrawing(each, settings)))}
      >
        Add a sheet of actuals
      </Button>
    </>
  );
}
