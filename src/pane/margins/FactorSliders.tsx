/** The figures that can be moved, each by a slider or by typing. */
import { factorWords } from "../../core/pricing/chances/factorWords";
import type { Finding } from "../../core/base/finding";
import { factorName, type Factor } from "../../core/pricing/chances/whatIf";
import { FactorSlider } from "./FactorSlider";

export type FactorSlidersProps = {
  readonly factors: readonly Factor[];
  /** As typed, by `factorName`. */
  readonly changes: ReadonlyMap<string, string>;
  readonly faults: ReadonlyMap<string, Finding>;
  readonly onChange: (changes: ReadonlyMap<string, string>) => void;
};

export const FactorSliders = ({ factors, changes, faults, onChange }: FactorSlidersProps) =>
  factors.map((factor) => {
    const name = factorName(factor);
    const isDiscount = factor.kind === "discount";
    return (
      <FactorSlider
        key={name}
        name={factorWords(factor)}
        typed={changes.get(name) ?? ""}
        fault={faults.get(name)}
        low={isDiscount ? 0 : -50}
        high={isDiscount ? 30 : 50}
        onType={(text) => onChange(new Map([...changes, [name, text]]))}
      />
    );
  });
