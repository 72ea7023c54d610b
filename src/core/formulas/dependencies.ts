/** In which order values that use one another can be worked out, and which never can. */

/** Something with a name that is worked out from others. */
export type Dependent = {
  readonly name: string;
  /** The names it uses; those that no item has come from elsewhere and are passed over. */
  readonly uses: readonly string[];
};

export type DependencyOrder<Item extends Dependent> = {
  /** Items that can be worked out, each after all it uses, otherwise in the order given. */
  readonly order: readonly Item[];
  /** For each knot of items that use each other one shortest path, such as `["a", "b", "a"]`. */
  readonly cycles: readonly (readonly string[])[];
  /** Items that cannot be worked out: those on a cycle, and those that use them, in any depth. */
  readonly blocked: readonly Item[];
};

/** A cycle as a person reads it: `panels → leaf_width → panels`. */
export const cycleText = (path: readonly string[]): string => path.join(" → ");

/**
 * Sorts items by what they use. Names are compared as they are. Where two items have one name, those
 * who use it wait for both. Time and memory grow with the number of uses.
 */
export function sortByDependencies<Item extends Dependent>(
  items: readonly Item[],
): DependencyOrder<Item> {
  const uses = usesByIndex(items);
  const isBlocked = items.map(() => false);
  const order: Item[] = [];
  const blocked: Item[] = [];
  const cycles: string[][] = [];
  for (const knot of knots(uses)) {
    const [first = 0] = knot;
    const turns = knot.length > 1 || uses[first]?.includes(first) === true;
    if (turns) cycles.push(shortestCycle(uses, knot).map((index) => items[index]?.name ?? ""));
    const waits = turns || (uses[first]?.some((used) => isBlocked[used] === true) ?? false);
    for (const index of knot) {
      isBlocked[index] = waits;
      const item = items[index];
      if (item !== undefined) (waits ? blocked : order).push(item);
    }
  }
  return { order, cycles, blocked };
}

type Uses = readonly (readonly number[])[];

function usesByIndex(items: readonly Dependent[]): Uses {
  const makers = new Map<string, number[]>();
  items.forEach(({ name }, index) => {
    const same = makers.get(name);
    if (same === undefined) makers.set(name, [index]);
    else same.push(index);
  });
  return items.map((item) => [...new Set(item.uses)].flatMap((name) => makers.get(name) ?? []));
}

/**
 * Groups of indices that reach each other, each after all groups it uses (Tarjan's strongly connected
 * components, with a stack of its own so that a long chain cannot overflow the machine's). Indices of
 * a group ascend.
 */
function knots(uses: Uses): number[][] {
  const seenAt: (number | undefined)[] = uses.map(() => undefined);
  const reaches: number[] = uses.map(() => 0);
  const isOpen = uses.map(() => false);
  const open: number[] = [];
  const found: number[][] = [];
  let clock = 0;
  const visit = (index: number): { index: number; next: number } => {
    seenAt[index] = reaches[index] = clock++;
    open.push(index);
    isOpen[index] = true;
    return { index, next: 0 };
  };
  const lower = (index: number, to: number): void => {
    reaches[index] = Math.min(reaches[index] ?? 0, to);
  };

  for (let start = 0; start < uses.length; start++) {
    if (seenAt[start] !== undefined) continue;
    const path = [visit(start)];
    for (let step = path.at(-1); step !== undefined; step = path.at(-1)) {
      const { index } = step;
      const used = uses[index]?.[step.next++];
      if (used !== undefined) {
        const seen = seenAt[used];
        if (seen === undefined) path.push(visit(used));
        else if (isOpen[used] === true) lower(index, seen);
        continue;
      }
      path.pop();
      const user = path.at(-1);
      if (user !== undefined) lower(user.index, reaches[index] ?? 0);
      if (reaches[index] !== seenAt[index]) continue;
      const knot = open.splice(open.lastIndexOf(index));
      for (const member of knot) isOpen[member] = false;
      found.push(knot.sort((left, right) => left - right));
    }
  }
  return found;
}

/** A shortest way from the knot's first index back to itself, both ends included. */
function shortestCycle(uses: Uses, knot: readonly number[]): number[] {
  const [start = 0] = knot;
  const members = new Set(knot);
  const cameFrom = new Map<number, number>();
  const queue = [start];
  for (const index of queue) {
    for (const used of uses[index] ?? []) {
      if (used === start) return [...wayTo(index, cameFrom), start];
      if (!members.has(used) || cameFrom.has(used)) continue;
      cameFrom.set(used, index);
      queue.push(used);
    }
  }
  return [start, start];
}

function wayTo(index: number, cameFrom: ReadonlyMap<number, number>): number[] {
  const way: number[] = [];
  for (let at: number | undefined = index; at !== undefined; at = cameFrom.get(at)) way.push(at);
  return way.reverse();
}
