/** The service over HTTP. */

export { isLoopback } from "./guards.ts";
export { forecastByTheClock, nightOutcome, runNight, workNights } from "./nightly.ts";
export { openApiDocument } from "./open-api.ts";
export { drawnPasswordEndsAt, hashed, newInvitation, newPasswordTrouble } from "./passwords.ts";
export { openProgrammes, type Programmes } from "./programmes.ts";
export { openSeasonThreads, type SeasonThreads, usefulThreads } from "./season-threads.ts";
export { service } from "./service.ts";
export { type StartOptions, serve } from "./start.ts";
