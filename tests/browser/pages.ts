/** Every page of the tool by its address in the demonstration casebook, and what stands on it once it is there. */
import type { Page } from "playwright-core";

export interface Visited {
  readonly name: string;
  readonly path: string;
  /** Selector of what the page is about. */
  readonly ready: string;
  /** What is pressed once it is there, when the page is reached by an act and has no address of its own. */
  readonly act?: (page: Page) => Promise<void>;
  /** One page of each route is loaded by its address, as from a bookmark. */
  readonly fromBookmark?: true;
}

const caseOf = (code: string): string => `/cases/demonstration-case-tv-26-${code}`;
const vial = (code: string): string => `/bench/demonstration-specimen-tv26-${code}`;
const nowhere = "/nowhere";
const press = (name: string, then: string) => async (page: Page) => {
  await page.getByRole("button", { name, exact: true }).first().click();
  await page.locator(then).first().waitFor();
};

export const everyPage: readonly Visited[] = [
  { name: "cases", path: "/cases", ready: ".cases-table", fromBookmark: true },
  { name: "open-a-case", path: "/cases/open", ready: "form", fromBookmark: true },
  { name: "question-1-flags", path: `${caseOf("035")}/1`, ready: ".flags" },
  { name: "question-1", path: `${caseOf("014")}/1`, ready: '[role="grid"]' },
  { name: "question-2", path: `${caseOf("014")}/2`, ready: ".causes circle", fromBookmark: true },
  { name: "question-2-table", path: `${caseOf("014")}/2`, ready: ".causes", act: press("Table", ".causes-table") },
  { name: "question-2-stop", path: `${caseOf("022")}/2`, ready: ".causes circle" },
  { name: "question-3", path: `${caseOf("014")}/3`, ready: ".next li" },
  { name: "question-4", path: `${caseOf("014")}/4`, ready: ".quality li" },
  { name: "question-5", path: `${caseOf("014")}/5`, ready: ".weigh-form", fromBookmark: true },
  { name: "question-5-stop", path: `${caseOf("022")}/5`, ready: ".stops" },
  { name: "question-6", path: `${caseOf("014")}/6`, ready: ".steps-list", fromBookmark: true },
  { name: "question-6-closed", path: `${caseOf("003")}/6`, ready: "#page section h2" },
  { name: "walk", path: "/walk/demonstration-case-tv-26-031/demonstration-se-01", ready: ".keys", fromBookmark: true },
  { name: "apiaries", path: "/apiaries", ready: ".apiaries-table", fromBookmark: true },
  { name: "apiary", path: "/apiaries/demonstration-wb", ready: ".apiary", fromBookmark: true },
  { name: "bench", path: "/bench", ready: ".vials", fromBookmark: true },
  { name: "bench-receive", path: vial("0272"), ready: "form" },
  { name: "bench-reading", path: vial("0271"), ready: ".surface", fromBookmark: true },
  { name: "bench-review", path: vial("0271"), ready: ".surface", act: press("Look it over", ".review") },
  { name: "bench-locked", path: vial("0146"), ready: "form" },
  { name: "season-empty", path: "/season", ready: "form", fromBookmark: true },
  {
    name: "season",
    path: "/season?case=demonstration-case-tv-26-014&colony=demonstration-wb-03",
    ready: "#h-tells",
    act: async (page) => {
      await page.getByRole("group", { name: "Add a choice" }).getByRole("button", { name: "Formic acid" }).click();
      await page.getByRole("slider").first().waitFor();
      await page.getByText(/With formic acid from/).waitFor();
      await page.locator('[aria-busy="true"]').waitFor({ state: "detached" });
    },
  },
  { name: "records", path: "/records", ready: "#h-heads", fromBookmark: true },
  { name: "differences", path: "/records/differences", ready: "#page h1, #page .answer", fromBookmark: true },
  { name: "kept-apart", path: "/records/apart", ready: "#page h1, #page .answer", fromBookmark: true },
  { name: "bring-table", path: "/records/table", ready: "#h-file", fromBookmark: true },
  { name: "labels", path: "/labels", ready: ".label-records", fromBookmark: true },
  { name: "paper-labels", path: `${caseOf("014")}/paper/labels`, ready: ".paper-sheet" },
  { name: "paper-kit", path: `${caseOf("014")}/paper/kit`, ready: ".paper-sheet" },
  { name: "paper-report", path: `${caseOf("014")}/paper/report`, ready: ".paper-sheet", fromBookmark: true },
  { name: "evidence", path: "/evidence", ready: ".records li", fromBookmark: true },
  { name: "evidence-record", path: "/evidence/condition/tracheal_mites", ready: ".citations li", fromBookmark: true },
  { name: "own-experience", path: "/evidence/experience", ready: "#h-drift", fromBookmark: true },
  { name: "own-changes", path: "/evidence/changes", ready: ".own form", fromBookmark: true },
  { name: "reckoner", path: "/reckoner", ready: ".families a", fromBookmark: true },
  { name: "reckoner-method", path: "/reckoner/intervals", ready: ".result svg", fromBookmark: true },
  { name: "no-such-page", path: nowhere, ready: "h1", fromBookmark: true },
  { name: "no-such-case", path: "/cases/none/1", ready: "h1" },
];

/** The demonstration casebook, opened as a person opens it. */
export async function openDemonstration(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/cases`);
  await page.getByRole("button", { name: "Open the demonstration casebook" }).click();
  await page.locator(".cases-table").waitFor();
}

/** Goes to a page as a link of the tool does, without loading the whole anew, and waits until it is all there. */
export async function visit(page: Page, visited: Visited): Promise<void> {
  // By way of no page, so that one with the same address begins anew.
  await page.evaluate(() => history.pushState(null, "", "/no-page"));
  await page.getByText("There is no such page").waitFor();
  await page.evaluate((address) => history.pushState(null, "", address), visited.path);
  // What is waited for next may stand on that page as well.
  if (visited.path !== nowhere) await page.getByText("There is no such page").waitFor({ state: "detached" });
  await page.locator(visited.ready).first().waitFor();
  await settle(page, visited);
}

/** Loads a page by its address, as from a bookmark, and waits until it is all there. */
export async function load(page: Page, site: string, visited: Visited): Promise<void> {
  await page.goto(`${site}${visited.path}`);
  await page.locator(visited.ready).first().waitFor();
  await settle(page, visited);
}

async function settle(page: Page, { act }: Visited): Promise<void> {
  // The reckoner answers twice; only the last answer is looked at.
  await page.locator('[aria-busy="true"]').waitFor({ state: "detached" });
  if (act) await act(page);
}
