/** How lengths are read and written, and the currency; kept in the workbook. */
import { Field, Select } from "@fluentui/react-components";
import { lengthStyleNames, lengthWriter, type Settings } from "../../app/settings";
import { inches } from "../../core/base/units";
import { fractionDenominators } from "../../core/lengths/writeLength";
import { currencies } from "../../core/money/currency";
import { usePane } from "../state/paneContext";

/** Seven feet and some: enough to show feet, inches and a fraction. */
const example = inches(84 + 11 / 16);

const unitWords: Readonly<Record<Settings["unit"], string>> = { in: "inches", mm: "millimetres" };

export function MeasuresPart() {
  const { state, change } = usePane();
  const { settings } = state;
  return (
    <>
      <Field label="A bare number in the schedule is in">
        <Select
          value={settings.unit}
          onChange={(_, { value }) => change({ unit: value === "mm" ? "mm" : "in" })}
        >
          {Object.entries(unitWords).map(([unit, words]) => (
            <option key={unit} value={unit}>
              {words}
            </option>
          ))}
        </Select>
      </Field>
      <Field label="Lengths are written in" hint={`Such as ${lengthWriter(settings)(example)}`}>
        <Select
          value={settings.lengths}
          onChange={(_, { value }) => {
            const lengths = lengthStyleNames.find((name) => name === value);
            if (lengths !== undefined) change({ lengths });
          }}
        >
          {lengthStyleNames.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </Select>
      </Field>
      {settings.lengths === "feet and inches" ? (
        <Field label="To the nearest">
          <Select
            value={String(settings.fraction)}
            onChange={(_, { value }) => {
              const fraction = fractionDenominators.find((each) => String(each) === value);
              if (fraction !== undefined) change({ fraction });
            }}
          >
            {fractionDenominators.map((each) => (
              <option key={each} value={String(each)}>
                {each === 1 ? "inch" : `1/${each} inch`}
              </option>
            ))}
          </Select>
        </Field>
      ) : null}
      <Field label="Costs are in">
        <Select value={settings.currency} onChange={(_, { value }) => change({ currency: value })}>
          {currencies.map(({ code, sign }) => (
            <option key={code} value={code}>
              {code} ({sign})
            </option>
          ))}
        </Select>
      </Field>
    </>
  );
}
