/** The fields of an opening to try, as a person types them, with what is wrong with them. */
import { Input, Select } from "@fluentui/react-components";
import type { Finding } from "../../core/base/finding";
import type { Field } from "../../core/kitbook/fields";
import { LevelIcon } from "../parts/LevelIcon";
import { useSharedStyles } from "../parts/parts.styles";
import { useBookStyles } from "./book.styles";
import type { OpeningTexts } from "./formFields";

export type OpeningFormProps = {
  /** What this opening is called, for whoever does not see where it stands. */
  readonly name: string;
  readonly fields: readonly Field[];
  readonly texts: OpeningTexts;
  readonly onTexts: (texts: OpeningTexts) => void;
  readonly findings: readonly Finding[];
};

export function OpeningForm({ name, fields, texts, onTexts, findings }: OpeningFormProps) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  return (
    <div role="group" aria-label={name} className={shared.stack}>
      <div className={styles.fields}>
        {fields.map((field) => (
          <label key={field.name} className={styles.field}>
            <span className={shared.small}>{field.label}</span>
            <OneField
              field={field}
              text={texts[field.name] ?? ""}
              onText={(text) => onTexts({ ...texts, [field.name]: text })}
            />
          </label>
        ))}
      </div>
      {findings.map((finding) => (
        <div key={finding.message} role="status" className={styles.fault}>
          <LevelIcon level={finding.level} />
          <span>{finding.message}</span>
        </div>
      ))}
    </div>
  );
}

type OneFieldProps = {
  readonly field: Field;
  readonly text: string;
  readonly onText: (text: string) => void;
};

function OneField({ field, text, onText }: OneFieldProps) {
  const styles = useBookStyles();
  if (field.kind !== "yesNo") {
    return (
      <Input
        size="small"
        className={styles.input}
        input={{ className: styles.input }}
        value={text}
        onChange={(_, { value }) => onText(value)}
      />
    );
  }
  return (
    <Select size="small" value={text} onChange={(_, { value }) => onText(value)}>
      <option value="">not said</option>
      <option value="yes">yes</option>
      <option value="no">no</option>
    </Select>
  );
}
