/**
 * What a customer sees: scope, terms and prices, and nothing else.
 *
 * The types have no place for a cost, a margin, a markup, an hour, a supplier or a reason, and
 * `quotation` copies what it shows field by field, so that nothing comes along unseen.
 */
import type { Cents } from "../base/units";
import type { PricedAlternate } from "./alternates/alternates";
import type { RollUp } from "./rollup/rollUp";

/** One line of the scope: openings that are alike. */
export type QuotedOpening = {
  readonly mark: string;
  /** In the customer's words: the opening type. */
  readonly type: string;
  /** As text in the firm's own unit, such as `8'-0" x 7'-0"`. */
  readonly size: string;
  /** Which way the leaf opens; the empty text where it does not matter. */
  readonly hand: string;
  readonly quantity: number;
};

/** An alternate or option and what it adds to the price; below zero it takes away. */
export type QuotedAlternate = {
  readonly name: string;
  readonly kind: "alternate" | "option";
  readonly addsPrice: Cents;
};

/** What a person types for the quotation, once checked. */
export type QuotationTerms = {
  readonly firm: string;
  readonly customer: string;
  readonly project: string;
  readonly number: string;
  /** Date serials; the offer holds up to and including `validUntil`. */
  readonly date: number;
  readonly validUntil: number;
  readonly inclusions: readonly string[];
  readonly exclusions: readonly string[];
  readonly notes: readonly string[];
};

export type Quotation = QuotationTerms & {
  readonly scope: readonly QuotedOpening[];
  readonly openings: number;
  readonly price: Cents;
  /** What is charged on top; `null` where the job charges no sales tax. */
  readonly salesTax: Cents | null;
  readonly priceWithTax: Cents;
  readonly alternates: readonly QuotedAlternate[];
  readonly caution: string;
};

/** Stands on every quotation. */
const quotationCaution =
  "Install by the supplier's instructions and local codes. Doors on a way out, fire doors, loads and " +
  "anchors belong to a licensed person and are not part of this offer unless it says so.";

/**
 * Makes a quotation. Openings keep their order; those that are alike in all but the mark stay as
 * they are, since a customer asks for each mark.
 */
export function quotation(
  terms: QuotationTerms,
  scope: readonly QuotedOpening[],
  rolled: RollUp,
  alternates: readonly PricedAlternate[],
): Quotation {
  const { firm, customer, project, number, date, validUntil } = terms;
  const chargesTax = rolled.lines.some(({ group }) => group === "charged");
  return {
    firm,
    customer,
    project,
    number,
    date,
    validUntil,
    inclusions: [...terms.inclusions],
    exclusions: [...terms.exclusions],
    notes: [...terms.notes],
    scope: scope.map(({ mark, type, size, hand, quantity }) => ({
      mark,
      type,
      size,
      hand,
      quantity,
    })),
    openings: scope.reduce((sum, { quantity }) => sum + quantity, 0),
    price: rolled.price,
    salesTax: chargesTax ? rolled.taxCharged : null,
    priceWithTax: rolled.priceWithTax,
    alternates: alternates.map(({ name, kind, addsPrice }) => ({ name, kind, addsPrice })),
    caution: quotationCaution,
  };
}
