/** Writes WebAssembly: instructions as lists of bytes, functions with named locals, a module out of functions. */

/** Bytes of instructions that leave at most one value behind. */
export type Code = readonly number[];
export type ValueType = "i32" | "i64" | "f64" | "v128";

const typeByte: Readonly<Record<ValueType, number>> = { i32: 0x7f, i64: 0x7e, f64: 0x7c, v128: 0x7b };

/** Several instructions in a row. */
export const all = (...parts: readonly Code[]): Code => parts.flat();

function unsigned(value: number): Code {
  const bytes: number[] = [];
  let left = value;
  for (;;) {
    const low = left & 0x7f;
    left = Math.floor(left / 128);
    if (left === 0) return [...bytes, low];
    bytes.push(low | 0x80);
  }
}

function signed(value: bigint): Code {
  const bytes: number[] = [];
  let left = value;
  for (;;) {
    const low = Number(left & 0x7fn);
    left >>= 7n;
    if ((left === 0n && (low & 0x40) === 0) || (left === -1n && (low & 0x40) !== 0)) return [...bytes, low];
    bytes.push(low | 0x80);
  }
}

const bytesOf = (x: number): Code => [...new Uint8Array(Float64Array.of(x).buffer)];
const named = (text: string): Code => [...unsigned(text.length), ...[...text].map((letter) => letter.charCodeAt(0))];
const listed = (items: readonly Code[]): Code => [...unsigned(items.length), ...items.flat()];

const one = (byte: number) => (a: Code) => [...a, byte];
const two = (byte: number) => (a: Code, b: Code) => [...a, ...b, byte];
const wide = (number: number): Code => [0xfd, ...unsigned(number)];
const oneWide = (number: number) => (a: Code) => [...a, ...wide(number)];
const twoWide = (number: number) => (a: Code, b: Code) => [...a, ...b, ...wide(number)];
const load = (code: Code, align: number) => (address: Code, offset: number) => [
  ...address,
  ...code,
  align,
  ...unsigned(offset),
];
const store = (code: Code, align: number) => (address: Code, offset: number, value: Code) => [
  ...address,
  ...value,
  ...code,
  align,
  ...unsigned(offset),
];

export const i32 = {
  const: (x: number): Code => [0x41, ...signed(BigInt(x))],
  load: load([0x28], 2),
  ...{ eqz: one(0x45), eq: two(0x46), less: two(0x48), more: two(0x4a) },
  ...{ add: two(0x6a), sub: two(0x6b), mul: two(0x6c), and: two(0x71), shiftRight: two(0x76) },
  fromLong: one(0xa7),
  fromDouble: one(0xaa),
};

export const i64 = {
  const: (x: bigint): Code => [0x42, ...signed(x)],
  ...{ add: two(0x7c), mul: two(0x7e), and: two(0x83), xor: two(0x85), shiftRight: two(0x88) },
  fromWord: one(0xad),
};

export const f64 = {
  const: (x: number): Code => [0x44, ...bytesOf(x)],
  load: load([0x2b], 3),
  store: store([0x39], 3),
  ...{ equal: two(0x61), notEqual: two(0x62), less: two(0x63), more: two(0x64), most: two(0x65) },
  ...{ abs: one(0x99), neg: one(0x9a), sqrt: one(0x9f) },
  ...{ add: two(0xa0), sub: two(0xa1), mul: two(0xa2), div: two(0xa3), min: two(0xa4) },
  fromInteger: one(0xb7),
  fromWord: one(0xb8),
};

/** Two doubles at once. */
export const pair = {
  load: load(wide(0x00), 3),
  store: store(wide(0x0b), 3),
  /** One double of memory in both places. */
  loadTwice: load(wide(0x0a), 3),
  const: (low: number, high: number): Code => [...wide(0x0c), ...bytesOf(low), ...bytesOf(high)],
  twice: oneWide(0x14),
  of: (low: Code, high: Code): Code => [...low, ...wide(0x14), ...high, ...wide(0x22), 1],
  low: (a: Code): Code => [...a, ...wide(0x21), 0],
  high: (a: Code): Code => [...a, ...wide(0x21), 1],
  /** The low one in both places. */
  lowTwice: (a: Code): Code => shuffled(a, a, [0, 0]),
  /** The high one of the first beside the low one of the second. */
  between: (a: Code, b: Code): Code => shuffled(a, b, [1, 2]),
  xor: twoWide(0x51),
  ...{ add: twoWide(0xf0), sub: twoWide(0xf1), mul: twoWide(0xf2), min: twoWide(0xf4) },
};

const shuffled = (a: Code, b: Code, lanes: readonly [number, number]): Code => [
  ...a,
  ...b,
  ...wide(0x0d),
  ...lanes.flatMap((lane) => [0, 1, 2, 3, 4, 5, 6, 7].map((byte) => lane * 8 + byte)),
];

/** One of two values of a kind but `v128`: the first where the condition is not 0. */
export const choose = (first: Code, second: Code, condition: Code): Code => [...first, ...second, ...condition, 0x1b];
export const call = (index: number, ...given: readonly Code[]): Code => [...given.flat(), 0x10, ...unsigned(index)];
export const when = (condition: Code, then: Code, otherwise: Code = []): Code => [
  ...[...condition, 0x04, 0x40, ...then],
  ...(otherwise.length === 0 ? [] : [0x05, ...otherwise]),
  0x0b,
];
/** Repeats while the condition holds; it is asked before each round. */
export const whileTrue = (condition: Code, body: Code): Code => [
  ...[0x03, 0x40, ...condition, 0x04, 0x40],
  ...[...body, 0x0c, 0x01, 0x0b, 0x0b],
];

/** A local variable of a function. */
export interface Local {
  readonly get: Code;
  readonly set: (value: Code) => Code;
}

export interface Signature {
  readonly takes: readonly ValueType[];
  readonly gives: readonly ValueType[];
}

export interface Function extends Signature {
  readonly locals: readonly ValueType[];
  readonly body: Code;
}

/** A function from its parameters and a maker of further locals. */
export function written(
  { takes, gives }: Signature,
  body: (given: readonly Local[], local: (type: ValueType) => Local) => Code,
): Function {
  const locals: ValueType[] = [];
  const at = (index: number): Local => ({
    get: [0x20, ...unsigned(index)],
    set: (value) => [...value, 0x21, ...unsigned(index)],
  });
  const code = body(
    takes.map((_, index) => at(index)),
    (type) => at(takes.length + locals.push(type) - 1),
  );
  return { takes, gives, locals, body: code };
}

const section = (number: number, content: Code): Code => [number, ...unsigned(content.length), ...content];
const typesOf = (list: readonly ValueType[]): Code => listed(list.map((each) => [typeByte[each]]));

/**
 * The bytes of a module. Imported functions come first in the count of functions, then those written; the memory is
 * imported as `world.memory`, and the last function is exported as `run`.
 */
export function moduleBytes(
  imports: readonly (Signature & { readonly name: string })[],
  functions: readonly Function[],
): Uint8Array<ArrayBuffer> {
  const types = [...imports, ...functions].map(({ takes, gives }) => [0x60, ...typesOf(takes), ...typesOf(gives)]);
  const world = named("world");
  const imported = [
    [...world, ...named("memory"), 0x02, 0x00, ...unsigned(1)],
    ...imports.map(({ name }, index) => [...world, ...named(name), 0x00, ...unsigned(index)]),
  ];
  const last = imports.length + functions.length - 1;
  const bodies = functions.map(({ locals, body }) => {
    const content = [...listed(locals.map((each) => [1, typeByte[each]])), ...body, 0x0b];
    return [...unsigned(content.length), ...content];
  });
  return Uint8Array.from([
    ...[0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00],
    ...section(1, listed(types)),
    ...section(2, listed(imported)),
    ...section(3, listed(functions.map((_, index) => unsigned(imports.length + index)))),
    ...section(7, listed([[...named("run"), 0x00, ...unsigned(last)]])),
    ...section(10, listed(bodies)),
  ]);
}
