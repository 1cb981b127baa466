/** Good arguments changed in one place, and what an answer must never hold. */

/** A function and the arguments of a good call. */
export interface GoodRequest {
  readonly call: (...args: never[]) => unknown;
  readonly args: readonly unknown[];
  /** Members that another function made or that this one does not read: left as they are. */
  readonly unread?: readonly string[];
}

export type Path = readonly (string | number)[];

interface Node {
  readonly path: Path;
  readonly value: unknown;
}

/** Every number, list and object in the arguments, with its path; maps are taken as they are. */
export function nodesOf({ args, unread = [] }: GoodRequest): readonly Node[] {
  const walk = (value: unknown, path: Path): readonly Node[] => {
    if (typeof value === "number") return [{ path, value }];
    if (typeof value !== "object" || value === null || value instanceof Map) return [];
    const inside = Object.entries(value).filter(([name]) => !unread.includes(name));
    return [{ path, value }, ...inside.flatMap(([name, each]) => walk(each, [...path, name]))];
  };
  return args.flatMap((each, i) => (unread.includes(String(i)) ? [] : walk(each, [i])));
}

/** The arguments with another value at one path. */
export function changed(args: readonly unknown[], path: Path, value: unknown): readonly unknown[] {
  const put = (held: unknown, [first, ...rest]: Path): unknown => {
    if (first === undefined) return value;
    const copy = Array.isArray(held) ? [...(held as unknown[])] : { ...(held as object) };
    const slots = copy as Record<string, unknown>;
    slots[first] = put(slots[first], rest);
    return copy;
  };
  return put(args, path) as readonly unknown[];
}

/** Where an answer holds NaN, a number without end, or undefined. */
export function silences(value: unknown, path = "answer"): readonly string[] {
  if (value === undefined) return [`${path} is undefined`];
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => silences(each, `${path}.${name}`));
}
