/**
 * Executes one request of the object model: object paths and actions as JSON. Actions run in order;
 * the first that is refused ends the request, and what ran before it stays done.
 */
import { HostError, isHostObject, nothing, type HostObject } from "./hostObject";

const pathKinds = { root: 1, method: 3, property: 4, indexer: 5, reference: 6, null: 7 } as const;
const actionKinds = { instantiate: 1, query: 2, method: 3, set: 4, trace: 5 } as const;

type Arguments = {
  readonly Arguments?: readonly unknown[];
  readonly ReferencedObjectPathIds?: readonly (number | null)[];
};

type ObjectPath = {
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: Arguments;
};

type Action = {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: Arguments;
  readonly QueryInfo?: {
    readonly Select?: readonly string[];
    readonly Top?: number;
    readonly Skip?: number;
  };
};

export type RequestBody = {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
};

export type ActionResult = { readonly ActionId: number; readonly Value: unknown };
export type WireError = {
  readonly Code: string;
  readonly Message: string;
  readonly ActionIndex: number;
};
export type RequestResult = {
  readonly results: readonly ActionResult[];
  readonly traceIds: readonly number[];
  readonly error: WireError | null;
};

/** Objects that the add-in holds on to between requests. */
export type Kept = Map<string, HostObject>;

/** Runs before each action; what it throws the host answers. */
export type BeforeAction = (index: number) => void;

/** Whether a request lets go of objects, as the library does by itself at the end of a run. */
export const isCleanup = ({ Actions }: RequestBody): boolean =>
  Actions.some(({ Name }) => Name === "_RemoveReference");

export function execute(
  body: RequestBody,
  root: HostObject,
  kept: Kept,
  before: BeforeAction = () => undefined,
): RequestResult {
  const found = new Map<number, HostObject>();
  const resolve = (id: number): HostObject => {
    const known = found.get(id);
    if (known !== undefined) return known;
    const path = body.ObjectPaths[id];
    if (path === undefined) throw new HostError("InvalidObjectPath", `No object path ${id}.`);
    const parent = path.ParentObjectPathId ? resolve(path.ParentObjectPathId) : root;
    const object = follow(path, parent, argumentsOf(path.ArgumentInfo, resolve), root, kept);
    found.set(id, object);
    return object;
  };
  const results: ActionResult[] = [];
  const traceIds: number[] = [];
  for (const [index, action] of body.Actions.entries()) {
    if (action.ActionType === actionKinds.trace) {
      traceIds.push(action.Id);
      results.push({ ActionId: action.Id, Value: null });
      continue;
    }
    try {
      before(index);
      const object = resolve(action.ObjectPathId);
      const given = argumentsOf(action.ArgumentInfo, resolve);
      results.push({ ActionId: action.Id, Value: act(action, object, given, kept) });
    } catch (error) {
      if (!(error instanceof HostError)) throw error;
      const { code, message } = error;
      return { results, traceIds, error: { Code: code, Message: message, ActionIndex: index } };
    }
  }
  return { results, traceIds, error: null };
}

function argumentsOf(
  info: Arguments | undefined,
  resolve: (id: number) => HostObject,
): readonly unknown[] {
  const ids = info?.ReferencedObjectPathIds ?? [];
  return (info?.Arguments ?? []).map((value, index) => {
    const id = ids[index];
    return typeof id === "number" && id !== 0 ? resolve(id) : value;
  });
}

function follow(
  path: ObjectPath,
  parent: HostObject,
  given: readonly unknown[],
  root: HostObject,
  kept: Kept,
): HostObject {
  if (parent === nothing) return nothing;
  switch (path.ObjectPathType) {
    case pathKinds.root:
      return root;
    case pathKinds.null:
      return nothing;
    case pathKinds.reference:
      return kept.get(path.Name) ?? nothing;
    case pathKinds.property:
      return linkOf(parent, small(path.Name));
    case pathKinds.method:
      return objectFrom(call(parent, small(path.Name), given), path.Name);
    case pathKinds.indexer:
      return objectFrom(call(parent, "getItem", given), path.Name);
    default:
      throw unknownMember(parent, `object path of kind ${path.ObjectPathType}`);
  }
}

function act(action: Action, object: HostObject, given: readonly unknown[], kept: Kept): unknown {
  if (action.Name === "_RemoveReference") return void kept.delete(String(given[0]));
  if (object === nothing) return null;
  switch (action.ActionType) {
    case actionKinds.instantiate:
      return identity(object, kept);
    case actionKinds.query:
      return query(object, action.QueryInfo ?? {}, kept);
    case actionKinds.set: {
      const name = small(action.Name);
      const set = object.set?.[name];
      if (set === undefined) throw unknownMember(object, `${name} =`);
      set(given[0]);
      return null;
    }
    case actionKinds.method: {
      if (action.Name === "_KeepReference") {
        kept.set(`kept${kept.size + 1}-${action.Id}`, object);
        return null;
      }
      const value = call(object, small(action.Name), given);
      return isHostObject(value) ? null : (value ?? null);
    }
    default:
      throw unknownMember(object, `action of kind ${action.ActionType}`);
  }
}

const unknownMember = (object: HostObject, member: string): Error =>
  new Error(`The fake host has no ${object.kind}.${member}`);

const linkOf = (object: HostObject, name: string): HostObject => {
  const link = object.link?.[name];
  if (link === undefined) throw unknownMember(object, name);
  return link();
};

const objectFrom = (value: unknown, name: string): HostObject => {
  if (isHostObject(value)) return value;
  throw new Error(`The fake host's ${name} returned no object`);
};

/** A method, or `…OrNullObject` of one that finds things. */
function call(object: HostObject, name: string, given: readonly unknown[]): unknown {
  const known = object.call?.[name];
  if (known !== undefined) return known(...given);
  const plain = object.call?.[name.replace(/OrNullObject$/, "")];
  if (plain === undefined) throw unknownMember(object, `${name}()`);
  try {
    return plain(...given);
  } catch (error) {
    if (error instanceof HostError && error.code === "ItemNotFound") return nothing;
    throw error;
  }
}

function identity(object: HostObject, kept: Kept): Record<string, unknown> {
  const reference = [...kept].find(([, each]) => each === object)?.[0];
  return {
    ...(reference === undefined ? {} : { _ReferenceId: reference }),
    ...(object.id === undefined ? {} : { Id: object.id }),
  };
}

function query(
  object: HostObject,
  info: { readonly Select?: readonly string[]; readonly Top?: number; readonly Skip?: number },
  kept: Kept,
): unknown {
  if (object === nothing) return null;
  const out = identity(object, kept);
  const items = object.items?.();
  const select = info.Select ?? Object.keys(object.get ?? {});
  if (items !== undefined) {
    const ofItems = select
      .filter((name) => name !== "items" && !(name in (object.get ?? {})))
      .map((name) => name.replace(/^items\//, ""));
    for (const name of select)
      if (name in (object.get ?? {})) out[large(name)] = read(object, name);
    const skip = info.Skip ?? 0;
    const part = items.slice(skip, info.Top === undefined ? undefined : skip + info.Top);
    const own = ofItems.length === 0 ? {} : { Select: ofItems };
    out["_Items"] = part.map((item) => query(item, own, kept));
    return out;
  }
  const nested = new Map<string, string[]>();
  for (const name of select) {
    const [head = "", ...rest] = name.split("/");
    if (rest.length > 0) nested.set(head, [...(nested.get(head) ?? []), rest.join("/")]);
    else if (object.link?.[head] !== undefined)
      out[large(head)] = query(linkOf(object, head), {}, kept);
    else out[large(head)] = read(object, head);
  }
  for (const [head, rest] of nested) {
    out[large(head)] = query(linkOf(object, head), { Select: rest }, kept);
  }
  return out;
}

function read(object: HostObject, name: string): unknown {
  if (name === "_ReferenceId") return null;
  const get = object.get?.[name];
  if (get === undefined) throw unknownMember(object, name);
  return get();
}

const small = (name: string): string =>
  name.startsWith("_") ? name : name.charAt(0).toLowerCase() + name.slice(1);
const large = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);
