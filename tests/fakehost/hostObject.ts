/**
 * An object of the fake host as the wire sees it: readable and settable properties, links to other
 * objects, methods and items, each by its name in the object model with a small first letter.
 */

/** What real Excel answers when it refuses: a code that add-ins act on. */
export class HostError extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

const brand = Symbol("host object");

export type HostMembers = {
  readonly kind: string;
  readonly id?: string;
  readonly get?: Readonly<Record<string, () => unknown>>;
  readonly set?: Readonly<Record<string, (value: unknown) => void>>;
  readonly link?: Readonly<Record<string, () => HostObject>>;
  readonly call?: Readonly<Record<string, (...args: readonly unknown[]) => unknown>>;
  readonly items?: () => readonly HostObject[];
};

export type HostObject = HostMembers & { readonly [brand]: true };

export const hostObject = (members: HostMembers): HostObject => ({ ...members, [brand]: true });

export const isHostObject = (value: unknown): value is HostObject =>
  typeof value === "object" && value !== null && brand in value;

/** What `…OrNullObject` finds where there is nothing. */
export const nothing = hostObject({ kind: "nothing" });

export const refuse = (code: string, message: string): never => {
  throw new HostError(code, message);
};

export const notThere = (): never =>
  refuse("ItemNotFound", "The requested resource doesn't exist.");

export const badArgument = (
  message = "The argument is invalid or missing or has an incorrect format.",
): never => refuse("InvalidArgument", message);

export const denied = (): never =>
  refuse("AccessDenied", "You cannot perform the requested operation.");

/** (Source: Microsoft's page on error handling with the application-specific JavaScript APIs.) */
export const noWorksheet = (): never =>
  refuse(
    "UnsupportedSheet",
    "This sheet type does not support this operation, since it is a Macro or Chart sheet.",
  );

/** The argument as a text. */
export const textOf = (value: unknown): string =>
  typeof value === "string" ? value : badArgument();

/** The argument as a whole number. */
export const wholeOf = (value: unknown): number =>
  typeof value === "number" && Number.isInteger(value) ? value : badArgument();

/** The argument as a plain record. */
export const recordOf = (value: unknown): Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value)
    ? (value as Record<string, unknown>)
    : badArgument();

/** Properties kept in a record as they are set: what the fake does not act on. */
export function plainProperties(
  record: Record<string, unknown>,
  names: readonly string[],
  beforeSet: (name: string, value: unknown) => void = () => undefined,
): Pick<HostMembers, "get" | "set"> {
  const get = Object.fromEntries(names.map((name) => [name, () => record[name] ?? null]));
  const set = Object.fromEntries(
    names.map((name) => [
      name,
      (value: unknown) => {
        beforeSet(name, value);
        record[name] = value;
      },
    ]),
  );
  return { get, set };
}
