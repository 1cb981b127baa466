/** How the programs read and write what the memory map names. */
import { type Code, f64, i32, type Local, type ValueType } from "./encoder.ts";
import { type Constant, constants, type DayField, headByte, type Place, places, placesFrom } from "./memory-map.ts";

export type MakeLocal = (type: ValueType) => Local;

/** An address of 0, for places that are offsets. */
export const nowhere = i32.const(0);
export const constant = (name: Constant): Code => f64.load(nowhere, constants.indexOf(name) * 8);
export const place = (name: Place): Code => i32.load(nowhere, placesFrom + places.indexOf(name) * 4);
export const head = (name: Parameters<typeof headByte>[0]): Code => f64.load(nowhere, headByte(name));
export const setHead = (name: Parameters<typeof headByte>[0], value: Code): Code =>
  f64.store(nowhere, headByte(name), value);
/** Adds to a pointer. */
export const on = (pointer: Local, bytes: number): Code => pointer.set(i32.add(pointer.get, i32.const(bytes)));

/** Reads a field of today's row. */
export type Today = (field: DayField) => Code;
