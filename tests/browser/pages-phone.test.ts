/** Every page in a real browser on a phone. */
import { everyPageHolds } from "./every-page.ts";

everyPageHolds("phone");
