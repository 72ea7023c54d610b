/** The picture of an opening above its kit: each shows where the other is. */
import { makeStyles } from "@fluentui/react-components";
import { useMemo, useRef } from "react";
import { lengthStyleOf, lengthWriter } from "../../app/settings";
import type { OpeningCounts } from "../../core/bags/openingCounts";
import { drawElevation } from "../../core/elevation/drawElevation";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { sizeTexts } from "../../core/takeoff/sizeTexts";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { usePane } from "../state/paneContext";
import { kitBags, kitWords } from "./kitList";
import { KitLines } from "./KitLines";
import { LitWords } from "./LitWords";
import { OpeningPicture } from "./OpeningPicture";
import { usePointing } from "./usePointing";

const useStyles = makeStyles({
  figure: {
    position: "sticky",
    top: "-12px",
    zIndex: 1,
    margin: "0 -12px",
    padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}`,
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
    backgroundColor: tokens.colorNeutralBackground1,
    // Where there is little height the list needs all of it.
    "@media (max-height: 860px)": { position: "static" },
  },
});

export type OpeningKitProps = { readonly job: JobEstimate; readonly counts: OpeningCounts };

export function OpeningKit({ job, counts }: OpeningKitProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { lengths, fraction } = usePane().state.settings;
  const show = useMemo(() => lengthWriter({ lengths, fraction }), [lengths, fraction]);
  const elevation = useMemo(() => drawElevation(counts), [counts]);
  const bags = useMemo(() => kitBags(counts, elevation), [counts, elevation]);
  const words = useMemo(
    () => kitWords(elevation, sizeTexts(job.takeOff.lines, lengthStyleOf({ lengths, fraction }))),
    [elevation, job, lengths, fraction],
  );
  const pointing = usePointing();
  const firstLine = useRef<HTMLButtonElement>(null);

  const { lit } = pointing;
  const line = bags
    .flatMap(({ lines }) => lines)
    .find(({ key }) => lit?.kind === "line" && lit.key === key);
  const place = elevation.places.find(({ id }) => lit?.kind === "place" && lit.key === id);
  const litPlaces = new Set(line?.places.keys() ?? (place === undefined ? [] : [place.id]));
  return (
    <div {...pointing.listeners} className={shared.stack}>
      <figure className={styles.figure}>
        <OpeningPicture
          elevation={elevation}
          show={show}
          pointing={pointing}
          lit={litPlaces}
          placeWords={words.place}
          onLeave={() => firstLine.current?.focus()}
        />
        <LitWords line={line} place={place} elevation={elevation} words={words} />
      </figure>
      <KitLines bags={bags} pointing={pointing} words={words} firstLine={firstLine} />
    </div>
  );
}
