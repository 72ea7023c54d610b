/** Which opening type a part of the view is about. */
import { Field, Select } from "@fluentui/react-components";
import type { OpeningType } from "../../core/kitbook/kitBook";
import { counted } from "../parts/quantities";

export type TypeChoiceProps = {
  readonly types: readonly OpeningType[];
  readonly type: OpeningType;
  readonly onType: (name: string) => void;
};

export function TypeChoice({ types, type, onType }: TypeChoiceProps) {
  return (
    <Field label="Opening type">
      <Select value={type.name} onChange={(_, { value }) => onType(value)}>
        {types.map(({ name, broken }) => (
          <option key={name} value={name}>
            {broken.length === 0 ? name : `${name}: ${counted(broken.length, "row")} left out`}
          </option>
        ))}
      </Select>
    </Field>
  );
}
