/** Small shapes that several entry kinds share. */
import * as z from "zod";
import { isDay } from "../../units/index.ts";

/** Text that can be hashed: half a surrogate pair, left by a cut in the middle of a character, becomes U+FFFD. */
const wellFormed = z.string().overwrite((given) => given.toWellFormed());
/** A short text; spaces around it are dropped. */
export const text = wellFormed.trim().min(1).max(4000);
/** A text of any sort, kept as it is; may be empty. */
export const longText = wellFormed.max(20_000);
/** An opaque id. */
export const id = wellFormed.min(1).max(100);
/** A calendar day. */
export const day = z.string().refine(isDay, { message: "a calendar day as YYYY-MM-DD" });
/** A number of things. */
export const count = z.number().int().min(0).max(100_000);
/** A share, 0 to 1. */
export const share = z.number().min(0).max(1);
/** Degrees north. */
export const latitude = z.number().min(-90).max(90);
/** Degrees east. */
export const longitude = z.number().min(-180).max(180);
/** Twelve mean temperatures in Celsius, January first. */
export const monthlyMeans = z.array(z.number().min(-60).max(50)).length(12);
/** What was looked for and seen, looked for and not seen, or not looked for. */
export const findingState = z.enum(["present", "absent", "not-looked"]);
/** Where the bees were taken: S super or inner cover, E honey and pollen edge, B open brood, F entrance, D dead. */
export const bodyOfBees = z.enum(["S", "E", "B", "F", "D"]);
/** How the bees are kept until they are read. */
export const preservative = z.enum(["ethanol-70", "frozen", "fresh", "dry"]);
