/** Which column of the schedule is what: guessed from the headings, corrected here. */
import { makeStyles, Select } from "@fluentui/react-components";
import type { Inputs } from "../../app/reading/inputs";
import type { ScheduleKey } from "../../core/openings/openingRow";
import { scheduleColumns } from "../../tables/scheduleColumns";
import { noColumn } from "../../tables/scheduleLayout";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";
import { usePane } from "../state/paneContext";
import { withColumn, type ColumnChoice } from "./columnChoices";
import { useScheduleHeadings } from "./useScheduleHeadings";
import { tokens } from "../parts/tokens";
import { SmallButton } from "../parts/SmallButton";

const useStyles = makeStyles({
  where: {
    display: "flex",
    alignItems: "center",
    flexWrap: "wrap",
    gap: tokens.spacingHorizontalXS,
  },
  columns: { display: "grid", gap: tokens.spacingVerticalXS },
  column: {
    display: "grid",
    gridTemplateColumns: "minmax(92px, 1fr) 2fr",
    alignItems: "center",
    gap: tokens.spacingHorizontalS,
  },
  select: { minWidth: 0 },
});

export function ColumnsPart({ inputs }: { readonly inputs: Inputs }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { state, change } = usePane();
  const mapping = state.settings.columns;
  const [reading] = inputs.readings;
  const choices = useScheduleHeadings(inputs);
  const guessed = (key: ScheduleKey): ColumnChoice | undefined => {
    const match = reading?.columns.find((column) => column.key === key);
    return choices.find(({ column }) => column === match?.column);
  };
  return (
    <>
      {reading === undefined ? (
        <div>Say which column is which: the schedule cannot be read yet.</div>
      ) : (
        <div className={`${shared.small} ${styles.where}`}>
          Headings are in
          <PlaceButton
            place={{
              sheet: reading.schedule.sheet,
              row: reading.headingRow,
              column: reading.firstColumn,
            }}
          />
          {inputs.readings.length > 1 ? `and on ${inputs.readings.length - 1} more` : ""}
        </div>
      )}
      <div className={styles.columns}>
        {scheduleColumns.map(({ key, label }) => (
          <label key={key} className={styles.column}>
            {label}
            <Select
              size="small"
              className={styles.select}
              value={mapping[key] ?? ""}
              onChange={(_, { value }) => change({ columns: withColumn(mapping, key, value) })}
            >
              <option value="">{foundWords(mapping[key], guessed(key))}</option>
              {choices.map((choice) => (
                <option key={choice.value} value={choice.value}>
                  {choice.label}
                </option>
              ))}
              {isOther(mapping[key], choices) ? (
                <option value={mapping[key]}>{mapping[key]}: not there</option>
              ) : null}
              <option value={noColumn}>None of them</option>
            </Select>
          </label>
        ))}
      </div>
      {Object.keys(mapping).length === 0 ? null : (
        <SmallButton onClick={() => change({ columns: {} })}>
          Find all columns by their headings
        </SmallButton>
      )}
    </>
  );
}

/** The first choice, which leaves the column to be found: it says what is found now. */
function foundWords(mapped: string | undefined, guessed: ColumnChoice | undefined): string {
  if (mapped !== undefined) return "Find by its heading";
  return guessed === undefined ? "Not found" : `Found in ${guessed.label}`;
}

const isOther = (mapped: string | undefined, choices: readonly ColumnChoice[]): boolean =>
  mapped !== undefined && mapped !== noColumn && !choices.some(({ value }) => value === mapped);
