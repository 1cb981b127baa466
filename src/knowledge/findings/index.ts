/** All findings, by id. */
import type { FindingFact } from "../fact.ts";
import type { FindingId } from "../ids.ts";
import { apiaryFindings } from "./apiary.ts";
import { broodFindings } from "./brood.ts";
import { combsFindings } from "./combs.ts";
import { entranceFindings } from "./entrance.ts";
import { groundFindings } from "./ground.ts";
import { historyFindings } from "./history.ts";
import { storesFindings } from "./stores.ts";
import { underLidFindings } from "./under-lid.ts";

/** Every finding by its id: what it is called, asked, looked for, and where one stands to see it. */
export const findings: { readonly [Id in FindingId]: FindingFact<Id> } = {
  ...entranceFindings,
  ...groundFindings,
  ...underLidFindings,
  ...combsFindings,
  ...broodFindings,
  ...storesFindings,
  ...apiaryFindings,
  ...historyFindings,
};
