/** Which jobs of this workbook and of others are ordered; others are chosen or dropped in here. */
import { Button, Checkbox, makeStyles, mergeClasses } from "@fluentui/react-components";
import { DismissRegular } from "@fluentui/react-icons/svg/dismiss";
import { useRef, useState, type DragEvent } from "react";
import type { JobsFile } from "../../app/orders/chooseJobs";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { jobKey } from "../../core/takeoff/takeOff";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { counted } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { jobId, type OrderChoice } from "./orderChoice";
import type { OrderFiles } from "./useOrderFiles";

const useStyles = makeStyles({
  zone: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalS,
    borderRadius: tokens.borderRadiusLarge,
    outline: "2px dashed transparent",
    outlineOffset: "2px",
  },
  over: { outlineColor: tokens.colorBrandStroke1, backgroundColor: tokens.colorNeutralBackground3 },
  group: { minWidth: 0, margin: 0, padding: 0, border: "none" },
  legend: {
    display: "flex",
    alignItems: "center",
    justifyContent: "space-between",
    gap: tokens.spacingHorizontalS,
    width: "100%",
    padding: 0,
    overflowWrap: "anywhere",
  },
  job: { display: "flex", alignItems: "center", justifyContent: "space-between" },
  name: { minWidth: 0, overflowWrap: "anywhere" },
});

export type FilesPartProps = {
  /** This workbook first. */
  readonly files: readonly JobsFile[];
  readonly handle: OrderFiles;
  readonly choice: OrderChoice;
  readonly onChoice: (choice: OrderChoice) => void;
};

export function FilesPart({ files, handle, choice, onChoice }: FilesPartProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const input = useRef<HTMLInputElement>(null);
  const [isOver, setOver] = useState(false);
  const { opening, faults, add, remove, clearFaults } = handle;
  const onDrag = (event: DragEvent): void => {
    if (!event.dataTransfer.types.includes("Files")) return;
    event.preventDefault();
    setOver(true);
  };
  const onDrop = (event: DragEvent): void => {
    setOver(false);
    if (!event.dataTransfer.types.includes("Files")) return;
    event.preventDefault();
    add([...event.dataTransfer.files]);
  };
  return (
    <section
      aria-label="Jobs to order for"
      // The page around the pane leaves what is dropped here to it.
      data-takes-files=""
      className={mergeClasses(styles.zone, isOver && styles.over)}
      onDragOver={onDrag}
      onDragLeave={() => setOver(false)}
      onDrop={onDrop}
    >
      {files.map(({ file, takeOff }, index) => (
        <fieldset key={file} className={styles.group}>
          <legend className={mergeClasses(shared.subheading, styles.legend)}>
            <span>{index === 0 ? "Jobs of this workbook" : `Jobs of ${file}`}</span>
          </legend>
          {takeOff.estimate.jobs.map((job) => (
            <JobChoice key={jobKey(job.job)} {...{ file, job, choice, onChoice }} />
          ))}
          {index === 0 ? null : (
            <SmallButton look="bare" icon={<DismissRegular />} onClick={() => remove(file)}>
              Take {file} off
            </SmallButton>
          )}
        </fieldset>
      ))}
      {opening.map((name, index) => (
        <div key={`${index} ${name}`} role="status">
          Opening {name}…
        </div>
      ))}
      {faults.map((fault) => (
        <Notice key={fault} level="stop" onClose={clearFaults}>
          {fault}
        </Notice>
      ))}
      <div>
        <Button onClick={() => input.current?.click()}>Add workbooks…</Button>
        <div className={shared.small}>
          .xlsx or .csv, chosen or dropped here. They stay as they are.
        </div>
        <input
          ref={input}
          type="file"
          multiple
          hidden
          accept=".xlsx,.xlsm,.csv"
          aria-label="Workbooks to order from"
          onChange={({ target }) => {
            add([...(target.files ?? [])]);
            target.value = "";
          }}
        />
      </div>
    </section>
  );
}

type JobChoiceProps = Pick<FilesPartProps, "choice" | "onChoice"> & {
  readonly file: string;
  readonly job: JobEstimate;
};

function JobChoice({ file, job, choice, onChoice }: JobChoiceProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const id = jobId(file, job.job);
  const { leftOut } = choice;
  const toggle = (isIn: boolean): void =>
    onChoice({
      ...choice,
      leftOut: new Set(isIn ? [...leftOut].filter((each) => each !== id) : [...leftOut, id]),
    });
  const { rows, uncounted } = job;
  return (
    <div className={styles.job}>
      <Checkbox
        className={styles.name}
        label={job.job}
        checked={!leftOut.has(id)}
        onChange={(_, { checked }) => toggle(checked === true)}
      />
      <span className={mergeClasses(shared.small, shared.number)}>
        {uncounted.length === 0
          ? counted(rows, "opening")
          : `${rows - uncounted.length} of ${counted(rows, "opening")}`}
      </span>
    </div>
  );
}
