/** The fields of an opening that every kit-book formula may use. */

/**
 * What a field's values are. `length` is inches. `found` is whatever the cell held: a number, yes or
 * no, or text.
 */
export type FieldKind = "text" | "number" | "length" | "yesNo" | "found";

/** `name` is what formulas call it, `label` what a person reads. */
export type Field = { readonly name: string; readonly label: string; readonly kind: FieldKind };

/** The fields that are always there, in slot order. A further heading of a schedule adds one. */
export const standardFields = [
  { name: "job", label: "Job", kind: "text" },
  { name: "mark", label: "Mark", kind: "text" },
  { name: "quantity", label: "Quantity", kind: "number" },
  { name: "type", label: "Type", kind: "text" },
  { name: "width", label: "Width", kind: "length" },
  { name: "height", label: "Height", kind: "length" },
  { name: "post_height", label: "Post height", kind: "length" },
  { name: "tail_post", label: "Tail post", kind: "yesNo" },
  { name: "tail_run", label: "Tail run", kind: "length" },
  { name: "transom", label: "Transom", kind: "yesNo" },
  { name: "transom_height", label: "Transom height", kind: "length" },
  { name: "floor", label: "Floor", kind: "text" },
  { name: "lock", label: "Lock", kind: "text" },
  { name: "hand", label: "Hand", kind: "text" },
] as const satisfies readonly Field[];

export type StandardFieldName = (typeof standardFields)[number]["name"];
