/** Every page in a real browser on a desk. */
import { everyPageHolds } from "./every-page.ts";

everyPageHolds("desk");
