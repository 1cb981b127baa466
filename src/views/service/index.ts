/** The service over HTTP. */
export { type ForecastThreads, openForecastThreads } from "./forecast-threads.ts";
export { isLoopback } from "./guards.ts";
export { openApiDocument } from "./open-api.ts";
export { hashed, newInvitation, newPasswordTrouble } from "./passwords.ts";
export { openProgrammes, type Programmes } from "./programmes.ts";
export { service } from "./service.ts";
export { type StartOptions, serve } from "./start.ts";
