/** Fields that several verbs share, each with the words that help and messages print. */
import * as z from "zod";
import { isDay } from "../../units/index.ts";

/** Whole number of bees, mites, colonies. */
export const count = z.number().int().min(0).max(10_000_000);

/** 0 to 1, ends included. */
export const share = z.number().min(0).max(1);

/** Above 0, up to 1. */
export const positiveShare = z.number().gt(0).lte(1);

/** A share or chance strictly between 0 and 1. */
export const openShare = z.number().gt(0).lt(1);

/** Probability content of an interval, or a wanted confidence. Below 1 in 100 nobody asks, and limits close on their estimate. */
export const level = z.number().gte(0.01).lt(1);

/** `2026-03-09`. */
export const day = z.string().refine(isDay, { message: "a calendar day as YYYY-MM-DD" }).meta({ format: "date" });

/** Highs as a station gives them. */
export const dailyMaxCelsius = z
  .array(z.strictObject({ date: day, value: z.number() }))
  .min(1)
  .max(4000)
  .exactOptional();

/** How far the high of a day lies above its mean. */
export const highAboveMeanCelsius = z.number().min(0).max(30).exactOptional();

/** Meteorological season at the colony. */
export const season = z.enum(["winter", "spring", "summer", "autumn"]);

/** An estimate with its interval. */
export const estimate = z.strictObject({
  value: z.number().describe("the point estimate"),
  low: z.number(),
  high: z.number(),
  level: z.number().describe("probability content of the interval"),
  interval: z.enum(["confidence", "credible"]),
  method: z.string(),
  rule: z.string().describe("rule that fixes the method"),
  n: z.number().nullable().describe("units examined"),
});

/** A lawful refusal: the rule and the reason in words. */
export const refusal = z.strictObject({ rule: z.string(), reason: z.string() });

/** Shares for which to tell what a sample could have missed. */
export const prevalences = z.array(share).max(200).default([0.01, 0.02, 0.05, 0.1, 0.2]);

/** One point of what a number of bees could have missed. */
export const couldMiss = z.strictObject({
  prevalence: z.number().describe("share of infested bees"),
  missed: z.number().describe("share of such samples in which none would be found"),
});
