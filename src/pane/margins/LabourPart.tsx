/** The hours of a job: by role, by bag, and the reasons opening by opening. */
import type { JobHours } from "../../core/pricing/hours";
import { Disclosure } from "../parts/Disclosure";
import { useSharedStyles } from "../parts/parts.styles";
import { counted, countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { useMore } from "../parts/useMore";
import { Line } from "./RollUpPart";

const hoursText = (hundredths: number): string => `${(hundredths / 100).toFixed(2)} h`;
const minutesText = (minutes: number): string =>
  `${minutes.toLocaleString("en-US", { maximumFractionDigits: 1 })} min`;

const firstOpenings = 20;

export function LabourPart({ hours }: { readonly hours: JobHours }) {
  const shared = useSharedStyles();
  return (
    <>
      <ul className={shared.list}>
        {hours.roles.map(({ role, hundredths }) => (
          <Line key={role} label={`Hours of ${role}`} words="" value={hoursText(hundredths)} />
        ))}
        <Line
          isSum
          label="Hours of all"
          words={`${minutesText(hours.minutes)} of one person; ${counted(hours.days, "day")} of the crew on the site`}
          value={hoursText(hours.hundredths)}
        />
      </ul>
      <Disclosure label="By bag">
        {() => (
          <ul className={shared.list}>
            {hours.bags.map(({ bag, minutes }) => (
              <Line key={bag} label={bag} words="" value={minutesText(minutes)} />
            ))}
          </ul>
        )}
      </Disclosure>
      <Disclosure label="Why: opening by opening">{() => <Reasons hours={hours} />}</Disclosure>
    </>
  );
}

function Reasons({ hours }: { readonly hours: JobHours }) {
  const shared = useSharedStyles();
  const more = useMore(hours.openings, firstOpenings);
  return (
    <>
      <ul className={shared.list}>
        {more.shown.map(({ mark, minutes, steps }, index) => (
          <Line
            key={`${mark} ${index}`}
            label={mark}
            words={steps.map(({ says }) => says).join("; ")}
            value={minutesText(minutes)}
          />
        ))}
        {hours.fixed.map(({ says, minutes }) => (
          <Line key={says} label="Of the job" words={says} value={minutesText(minutes)} />
        ))}
      </ul>
      {more.left === 0 ? null : (
        <SmallButton onClick={more.showMore}>Show more ({countText(more.left)})</SmallButton>
      )}
    </>
  );
}
