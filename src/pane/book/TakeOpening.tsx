/** An opening of the schedule, found by its mark or job, to try the kit book with. */
import { Field, Input } from "@fluentui/react-components";
import { useState } from "react";
import type { Opening } from "../../core/openings/opening";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { useBookStyles } from "./book.styles";

export type TakeOpeningProps = {
  readonly openings: readonly Opening[];
  readonly onTake: (opening: Opening) => void;
};

const mostShown = 6;

export function TakeOpening({ openings, onTake }: TakeOpeningProps) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  const [search, setSearch] = useState("");
  const words = search.toLowerCase().split(/\s+/);
  const found = openings.filter(({ mark, job, type }) => {
    const text = `${mark} ${job} ${type}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
  return (
    <>
      <Field label="Take one from the schedule">
        <Input
          type="search"
          placeholder="Mark, job or type"
          value={search}
          onChange={(_, { value }) => setSearch(value)}
        />
      </Field>
      <div className={styles.buttons}>
        {found.slice(0, mostShown).map((opening) => (
          <SmallButton
            key={`${opening.place.sheet} ${opening.place.row}`}
            onClick={() => onTake(opening)}
          >
            {opening.mark}
            <span className={shared.hidden}>
              {" "}
              of {opening.job}, {opening.type}
            </span>
          </SmallButton>
        ))}
        {found.length <= mostShown ? null : (
          <span className={shared.small}>and {countText(found.length - mostShown)} more</span>
        )}
        {found.length === 0 ? <span role="status">No opening has “{search}”.</span> : null}
      </div>
    </>
  );
}
