/** Reads a parsed JSON value as a shape that was kept: whole, or not at all. */

/** The value as that type; `undefined` where it is not of it. */
export type Shape<T> = (value: unknown) => T | undefined;

export const aText: Shape<string> = (value) => (typeof value === "string" ? value : undefined);
export const aNumber: Shape<number> = (value) =>
  typeof value === "number" && Number.isFinite(value) ? value : undefined;
export const aYesNo: Shape<boolean> = (value) => (typeof value === "boolean" ? value : undefined);

export const orNull =
  <T>(shape: Shape<T>): Shape<T | null> =>
  (value) =>
    value === null ? null : shape(value);

/** For what older versions did not keep. */
export const ifThere =
  <T>(shape: Shape<T>, absent: T): Shape<T> =>
  (value) =>
    value === undefined ? absent : shape(value);

/** The value where `isRight` says so. */
export const numberThat =
  <T extends number>(isRight: (value: number) => boolean, brand: (value: number) => T): Shape<T> =>
  (value) =>
    typeof value === "number" && isRight(value) ? brand(value) : undefined;

export const oneOf =
  <T extends string | number>(words: readonly T[]): Shape<T> =>
  (value) =>
    words.find((word) => word === value);

export const listOf =
  <T>(shape: Shape<T>): Shape<readonly T[]> =>
  (value) => {
    if (!Array.isArray(value)) return undefined;
    const read = value.flatMap((each): readonly T[] => {
      const one = shape(each);
      return one === undefined ? [] : [one];
    });
    return read.length === value.length ? read : undefined;
  };

/** An object with all of these parts, in their order; others are left out. */
export const partsOf =
  <T extends object>(shapes: { readonly [Key in keyof T]: Shape<T[Key]> }): Shape<T> =>
  (value) => {
    if (typeof value !== "object" || value === null) return undefined;
    const given = value as Readonly<Record<string, unknown>>;
    const read = Object.entries<Shape<unknown>>(shapes).map(
      ([key, shape]) => [key, shape(Object.hasOwn(given, key) ? given[key] : undefined)] as const,
    );
    return read.some(([, part]) => part === undefined)
      ? undefined
      : (Object.fromEntries(read) as T);
  };
