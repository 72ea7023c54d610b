/** Jobs: totals at a glance, then the lines of one, then the reasons for a line. */
import { useState } from "react";
import type { WorkbookTakeOff } from "../../app/takeOffWorkbook";
import { jobKey } from "../../core/takeoff/takeOff";
import { pieceKey } from "../../core/takeoff/partColumn";
import { JobList } from "./JobList";
import { allJobs, back, openJob, openLine } from "./jobsPlace";
import { JobLines, LineReasons } from "../views/laterViews";
import { Gone } from "./Gone";

export function JobsView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const [place, setPlace] = useState(allJobs);
  const goBack = (): void => setPlace(back(place));
  if (place.job === null) {
    return (
      <JobList
        jobs={takeOff.estimate.jobs}
        left={place.left}
        onOpen={(job) => setPlace(openJob(job))}
      />
    );
  }
  const job = takeOff.estimate.jobs.find((each) => jobKey(each.job) === place.job);
  if (job === undefined) return <Gone what="This job" onBack={goBack} />;
  if (place.line === null) {
    return (
      <JobLines
        job={job}
        left={place.left}
        onBack={goBack}
        onOpen={(line) => setPlace(openLine(place, line))}
      />
    );
  }
  const line = job.material.lines.find(
    (each) => pieceKey(each.line.item, each.line.size) === place.line,
  );
  if (line === undefined) return <Gone what="This line" onBack={goBack} />;
  return <LineReasons job={job.job} line={line} onBack={goBack} />;
}
