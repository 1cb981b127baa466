/** Every page in a real browser on a tablet. */
import { everyPageHolds } from "./every-page.ts";

everyPageHolds("tablet");
