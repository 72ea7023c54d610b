/** What workbooks say differently, each for the person to decide; nothing is merged in silence. */
import { makeStyles, mergeClasses, Radio, RadioGroup } from "@fluentui/react-components";
import { useId } from "react";
import type { JobsFile } from "../../app/orders/chooseJobs";
import type { Finding } from "../../core/base/finding";
import { jobKey } from "../../core/takeoff/takeOff";
import { LevelIcon } from "../parts/LevelIcon";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { useMore } from "../parts/useMore";
import { SmallButton } from "../parts/SmallButton";
import { decidedBy, jobClashes, jobId, type OrderChoice } from "./orderChoice";

const useStyles = makeStyles({
  decision: { padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}` },
  says: { display: "flex", gap: tokens.spacingHorizontalS },
  words: { minWidth: 0, overflowWrap: "anywhere" },
  undecided: { borderLeft: `4px solid ${tokens.colorStatusDangerBorder2}` },
});

export type DecisionsProps = {
  readonly files: readonly JobsFile[];
  /** Differing kit books and items of the chosen jobs. */
  readonly differing: readonly Finding[];
  readonly choice: OrderChoice;
  readonly onChoice: (choice: OrderChoice) => void;
};

export function Decisions({ files, differing, choice, onChoice }: DecisionsProps) {
  const books = differing.filter(({ code }) => code === "kit-books-differ");
  const items = differing.filter(({ code }) => code === "items-differ");
  const { kitBooksDecided, itemsDecided } = decidedBy(choice, files);
  const ofFiles = files.map(({ file }) => ({ value: `of ${file}`, file }));
  const holdsOf = (value: string): OrderChoice["kitBook"] => {
    const named = ofFiles.find((each) => each.value === value);
    return named === undefined ? { kind: "own" } : { kind: "of", file: named.file };
  };
  const valueOf = (holds: OrderChoice["kitBook"]): string =>
    holds === null ? "" : holds.kind === "own" ? "own" : `of ${holds.file}`;
  return (
    <>
      {jobClashes(files, choice).map(({ job, files: names }) => {
        const isDecided = choice.twoJobs.has(jobKey(job));
        const onlyOf = (only: string): OrderChoice => ({
          ...choice,
          leftOut: new Set([
            ...choice.leftOut,
            ...names.filter((name) => name !== only).map((name) => jobId(name, job)),
          ]),
        });
        return (
          <Decision
            key={jobKey(job)}
            isDecided={isDecided}
            says={[`“${job}” is a job of ${names.join(" and of ")}.`]}
            value={isDecided ? "both" : ""}
            answers={[
              { value: "both", label: "They are two jobs: order for both" },
              ...names.map((name) => ({
                value: `only ${name}`,
                label: `One job: only that of ${name}`,
              })),
            ]}
            onAnswer={(value) => {
              const only = names.find((name) => value === `only ${name}`);
              onChoice(
                only === undefined
                  ? { ...choice, twoJobs: new Set([...choice.twoJobs, jobKey(job)]) }
                  : onlyOf(only),
              );
            }}
          />
        );
      })}
      {books.length === 0 ? null : (
        <Decision
          isDecided={kitBooksDecided}
          says={books.map(({ message }) => saysOf(message))}
          value={kitBooksDecided ? valueOf(choice.kitBook) : ""}
          answers={[
            { value: "own", label: "Count each by its own kit book" },
            ...ofFiles.map(({ value, file }) => ({ value, label: `Count all by that of ${file}` })),
          ]}
          onAnswer={(value) => onChoice({ ...choice, kitBook: holdsOf(value) })}
        />
      )}
      {items.length === 0 ? null : (
        <Decision
          isDecided={itemsDecided}
          says={items.map(({ message }) => saysOf(message))}
          value={itemsDecided ? valueOf(choice.items) : ""}
          answers={[
            { value: "own", label: "The code is one item, whatever its words" },
            ...ofFiles.map(({ value, file }) => ({
              value,
              label: `The items of ${file} hold for all`,
            })),
          ]}
          onAnswer={(value) => onChoice({ ...choice, items: holdsOf(value) })}
        />
      )}
    </>
  );
}

/** A finding's words without what to do: that is chosen right below. */
const saysOf = (message: string): string => message.replace(/ Decide: .*$/s, "");

type DecisionProps = {
  readonly isDecided: boolean;
  readonly says: readonly string[];
  readonly value: string;
  readonly answers: readonly { readonly value: string; readonly label: string }[];
  readonly onAnswer: (value: string) => void;
};

const firstSaid = 5;

function Decision({ isDecided, says, value, answers, onAnswer }: DecisionProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const id = useId();
  const { shown, left, showMore } = useMore(says, firstSaid, 50);
  return (
    <section
      aria-labelledby={id}
      className={mergeClasses(shared.card, styles.decision, !isDecided && styles.undecided)}
    >
      <div className={styles.says}>
        <LevelIcon level={isDecided ? "note" : "stop"} />
        <div id={id} className={styles.words}>
          <span className={shared.hidden}>{isDecided ? "Decided: " : "To decide: "}</span>
          {shown.map((sentence) => (
            <div key={sentence}>{sentence}</div>
          ))}
        </div>
      </div>
      {left === 0 ? null : <SmallButton onClick={showMore}>Show more ({left})</SmallButton>}
      <RadioGroup
        aria-labelledby={id}
        value={value}
        onChange={(_, { value: answer }) => onAnswer(answer)}
      >
        {answers.map((answer) => (
          <Radio key={answer.value} value={answer.value} label={answer.label} />
        ))}
      </RadioGroup>
    </section>
  );
}
