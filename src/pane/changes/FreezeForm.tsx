/** Freezes what is counted now under a name, with the day, who and a note. */
import { Button, Field, Input, makeStyles } from "@fluentui/react-components";
import { useState, type SyntheticEvent } from "react";
import { today } from "../../app/today";
import { readDate } from "../../core/base/cell";
import { dateText } from "../../core/base/date";
import type { IssueHead } from "../../core/revisions/issue";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  form: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalS },
  pair: {
    display: "grid",
    gridTemplateColumns: "repeat(auto-fit, minmax(120px, 1fr))",
    gap: tokens.spacingHorizontalS,
  },
  // Else a long placeholder or date makes the field wider than its place.
  input: { minWidth: 0, width: "100%" },
});

export type FreezeFormProps = {
  /** Who froze the last one. */
  readonly lastWho: string;
  /** Whether what is counted is what the workbook holds, and nothing is being kept. */
  readonly isReady: boolean;
  /** Whether it was kept, once that is known. */
  readonly onFreeze: (head: IssueHead) => Promise<boolean>;
};

export function FreezeForm({ lastWho, isReady, onFreeze }: FreezeFormProps) {
  const styles = useStyles();
  const [name, setName] = useState("");
  const [day, setDay] = useState(() => dateText(today()));
  const [typedWho, setWho] = useState<string | null>(null);
  const [note, setNote] = useState("");
  // What is missing is said once a person has tried.
  const [isTried, setTried] = useState(false);
  const who = typedWho ?? lastWho;
  const missing = {
    name: name.trim() === "" ? "Name it, such as Bid or Revision B." : "",
    day: readDate(day) === null ? "Give the date." : "",
    who: who.trim() === "" ? "Say who, such as your initials." : "",
  };
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    const serial = readDate(day);
    setTried(true);
    if (!isReady || serial === null || Object.values(missing).some((words) => words !== "")) return;
    void onFreeze({ name, day: serial, who, note }).then((isKept) => {
      if (!isKept) return;
      setName("");
      setNote("");
      setTried(false);
    });
  };
  const said = (words: string) => (isTried && words !== "" ? { validationMessage: words } : {});
  return (
    <form className={styles.form} onSubmit={submit} noValidate>
      <Field label="Name" required {...said(missing.name)}>
        <Input
          className={styles.input}
          placeholder="Such as Bid or Revision B"
          value={name}
          onChange={(_, { value }) => setName(value)}
        />
      </Field>
      <div className={styles.pair}>
        <Field label="Date" required {...said(missing.day)}>
          <Input
            className={styles.input}
            type="date"
            value={day}
            onChange={(_, { value }) => setDay(value)}
          />
        </Field>
        <Field label="Who" required {...said(missing.who)}>
          <Input className={styles.input} value={who} onChange={(_, { value }) => setWho(value)} />
        </Field>
      </div>
      <Field label="Note">
        <Input className={styles.input} value={note} onChange={(_, { value }) => setNote(value)} />
      </Field>
      <Button type="submit" disabledFocusable={!isReady}>
        Freeze this count
      </Button>
    </form>
  );
}
