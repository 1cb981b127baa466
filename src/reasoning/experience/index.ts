/** A programme's own experience: what closed cases teach, how well past answers did, and what a change would change. */
export { experienceCaveats, type Learning } from "./caveats.ts";
export * from "./changes-under.ts";
export * from "./closed-case.ts";
export * from "./drift.ts";
export * from "./in-use.ts";
export {
  countsOf,
  countsWithout,
  type Experience,
  type ExperienceCounts,
  experienceOf,
  type Lesson,
  noCounts,
} from "./lessons.ts";
export * from "./problems.ts";
export * from "./score.ts";
export { isUsed, withExperience } from "./with-experience.ts";
