/** The elevation of an opening, drawn to scale; its places can be pointed at, and gone through by keys. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { useId, useMemo, useRef, type KeyboardEvent, type PointerEvent } from "react";
import type { Spot } from "../../core/base/picture";
import type { Elevation } from "../../core/elevation/elevation";
import { elevationPicture, paneFrame } from "../../core/elevation/elevationPicture";
import type { ShowLength } from "../../core/takeoff/describe";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { boxOf, PictureMark } from "./PictureMark";
import { across, layersOf, placeAfterKey, placeAt, type DrawnPlace } from "./placesInPicture";
import type { Pointing } from "./usePointing";
import { useWidth } from "./useWidth";

const useStyles = makeStyles({
  frame: { display: "flex", justifyContent: "center" },
  picture: {
    display: "block",
    maxWidth: "100%",
    height: "auto",
    overflow: "visible",
    cursor: "pointer",
    touchAction: "manipulation",
    fontFamily: "inherit",
  },
  place: { outlineStyle: "none" },
  lit: {
    color: tokens.colorBrandForegroundLink,
    strokeWidth: "2px",
    "@media (forced-colors: active)": { color: "Highlight" },
    "> rect, > line, > circle": { strokeWidth: "2px" },
  },
  around: {
    stroke: tokens.colorBrandStroke1,
    strokeWidth: "1.5px",
    strokeDasharray: "3 2",
    fill: tokens.colorBrandForegroundLink,
    fillOpacity: 0.16,
    pointerEvents: "none",
    "@media (forced-colors: active)": { stroke: "Highlight" },
  },
  focus: {
    stroke: tokens.colorStrokeFocus2,
    strokeWidth: "2px",
    fill: "none",
    pointerEvents: "none",
    "@media (forced-colors: active)": { stroke: "CanvasText" },
  },
});

/** Higher in a wide pane, where the list below it keeps its room. */
const heightFor = (width: number): number => Math.min(300, Math.max(paneFrame.height, width / 2));

/** CSS pixels that a pointer is within. */
const reach = { mouse: 3, touch: 9 } as const;

export type OpeningPictureProps = {
  readonly elevation: Elevation;
  readonly show: ShowLength;
  readonly pointing: Pointing;
  /** The places that are lit. */
  readonly lit: ReadonlySet<string>;
  /** What a place is called, with what it holds. */
  readonly placeWords: (place: string) => string;
  /** Out of the picture again by Escape. */
  readonly onLeave: () => void;
};

export function OpeningPicture(props: OpeningPictureProps) {
  const { elevation, show, pointing, lit, placeWords, onLeave } = props;
  const styles = useStyles();
  const shared = useSharedStyles();
  const wordsId = useId();
  const [width, frame] = useWidth(paneFrame.width);
  const svg = useRef<SVGSVGElement>(null);
  const picture = useMemo(
    () => elevationPicture(elevation, show, { ...paneFrame, width, height: heightFor(width) }),
    [elevation, show, width],
  );
  const { under, places, over } = useMemo(() => layersOf(picture), [picture]);
  // One place takes the focus when a person comes by Tab: the one that is lit, or the first.
  const entry = places.find(({ group }) => lit.has(group))?.group ?? across(places)[0];

  const placeUnder = (event: PointerEvent | React.MouseEvent): string | null => {
    const box = svg.current?.getBoundingClientRect();
    if (box === undefined || box.width === 0) return null;
    const scale = picture.width / box.width;
    const spot: Spot = {
      x: (event.clientX - box.left) * scale,
      y: (event.clientY - box.top) * scale,
    };
    const native = event.nativeEvent;
    const isTouch = "pointerType" in native && native.pointerType === "touch";
    return placeAt(places, spot, (isTouch ? reach.touch : reach.mouse) * scale);
  };
  const lightPlace = (place: string | null): void =>
    pointing.point(place === null ? null : { kind: "place", key: place });
  const onKeyDown = (event: KeyboardEvent, place: string): void => {
    if (event.key === "Escape") {
      event.preventDefault();
      pointing.letGo();
      onLeave();
      return;
    }
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      pointing.press({ kind: "place", key: place });
      return;
    }
    const isArrow = /^(?:Arrow|Home$|End$)/.test(event.key);
    if (!isArrow) return;
    event.preventDefault();
    const next = placeAfterKey(places, place, event.key);
    if (next === null) return;
    const groups = svg.current?.querySelectorAll<SVGGElement>("[data-place]") ?? [];
    [...groups].find((group) => group.dataset["place"] === next)?.focus();
  };
  return (
    <div ref={frame} className={styles.frame}>
      <p id={wordsId} className={shared.hidden}>
        {picture.description}
      </p>
      <svg
        ref={svg}
        viewBox={`0 0 ${picture.width} ${picture.height}`}
        width={picture.width}
        height={picture.height}
        className={styles.picture}
        fill="none"
        stroke="currentColor"
        strokeLinecap="round"
        strokeLinejoin="round"
        onPointerMove={(event) => {
          if (event.pointerType === "mouse") lightPlace(placeUnder(event));
        }}
        onPointerLeave={() => lightPlace(null)}
        onClick={(event) => {
          const place = placeUnder(event);
          if (place === null) pointing.letGo();
          else pointing.press({ kind: "place", key: place });
        }}
      >
        <g aria-hidden>
          {under.flatMap(({ marks }, run) =>
            marks.map((mark, index) => <PictureMark key={`${run} ${index}`} mark={mark} />),
          )}
        </g>
        <g role="listbox" aria-label={picture.title} aria-describedby={wordsId}>
          {places.map(({ group, marks }) => (
            <g
              key={group}
              role="option"
              data-place={group}
              tabIndex={group === entry ? 0 : -1}
              aria-selected={lit.has(group)}
              aria-label={placeWords(group)}
              className={mergeClasses(styles.place, lit.has(group) && styles.lit)}
              onFocus={() => pointing.focus({ kind: "place", key: group })}
              onBlur={() => pointing.focus(null)}
              onKeyDown={(event) => onKeyDown(event, group)}
            >
              {marks.map((mark, index) => (
                <PictureMark key={index} mark={mark} />
              ))}
            </g>
          ))}
        </g>
        <g aria-hidden>
          {over.flatMap(({ marks }, run) =>
            marks.map((mark, index) => <PictureMark key={`${run} ${index}`} mark={mark} />),
          )}
          {places
            .filter(({ group }) => lit.has(group))
            .map((place) => (
              <rect
                key={place.group}
                data-lit={place.group}
                className={styles.around}
                {...boxOf(grown(place))}
              />
            ))}
        </g>
      </svg>
    </div>
  );
}

/** Room around a place for the line that says that it is lit. */
const grown = ({ box: { x, y, width, height } }: DrawnPlace) => {
  const room = 2.5;
  return { x: x - room, y: y - room, width: width + 2 * room, height: height + 2 * room };
};
