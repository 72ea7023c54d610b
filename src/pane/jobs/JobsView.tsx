/** Jobs: totals at a glance, then the lines of one, then the reasons for a line; and any opening with its picture. */
import { Suspense, useMemo, useState } from "react";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import type { Opening } from "../../core/openings/opening";
import { jobKey } from "../../core/takeoff/takeOff";
import { correctionPlaces } from "./correctionPlaces";
import { JobList } from "./JobList";
import { allJobs, back, openJob, openLine, openOpening } from "./jobsPlace";
import { JobLines, LineReasons, OpeningView, SelectedOpening } from "../views/laterViews";
import { Gone } from "./Gone";
import { lineKey } from "./lineKey";
import { openingKeyOf, openingKeys } from "./openingKeys";

export function JobsView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const [place, setPlace] = useState(allJobs);
  const goBack = (): void => setPlace(back(place));
  const { jobs } = takeOff.estimate;
  const job = jobs.find((each) => jobKey(each.job) === place.job);
  const openings = job?.takeOff.openings ?? [];
  const opening = place.opening === null ? undefined : openingKeys(openings).get(place.opening);
  const line = job?.material.lines.find((each) => lineKey(each.line) === place.line);
  const placeOf = useMemo(() => correctionPlaces(takeOff), [takeOff]);
  const showOpening = (shown: Opening): void => {
    const key = openingKeyOf(openings, shown);
    if (key !== null) setPlace(openOpening(place, key));
  };

  const content = () => {
    if (place.job === null) {
      return <JobList jobs={jobs} left={place.left} onOpen={(each) => setPlace(openJob(each))} />;
    }
    if (job === undefined) return <Gone what="This job" onBack={goBack} />;
    if (place.opening !== null) {
      if (opening === undefined) return <Gone what="This opening" onBack={goBack} />;
      const backTo = place.line === null ? job.job : (line?.item?.description ?? "Back");
      return (
        <OpeningView
          key={place.opening}
          job={job}
          opening={opening}
          backTo={backTo}
          onBack={goBack}
        />
      );
    }
    if (place.line === null) {
      return (
        <JobLines
          job={job}
          placeOf={placeOf}
          left={place.left}
          search={place.search}
          onSearch={(search) => setPlace({ ...place, search, left: null })}
          onBack={goBack}
          onOpen={(each) => setPlace(openLine(place, each))}
          onOpening={showOpening}
        />
      );
    }
    if (line === undefined) return <Gone what="This line" onBack={goBack} />;
    return (
      <LineReasons
        job={job.job}
        line={line}
        placeOf={placeOf}
        onBack={goBack}
        onOpening={showOpening}
      />
    );
  };
  return (
    <>
      {content()}
      {/* It comes later, and the jobs need not wait for it. */}
      <Suspense>
        <SelectedOpening
          jobs={jobs}
          shown={opening}
          onOpen={(found, selected) => {
            const key = openingKeyOf(found.takeOff.openings, selected);
            if (key !== null) setPlace(openOpening(openJob(jobKey(found.job)), key));
          }}
        />
      </Suspense>
    </>
  );
}
