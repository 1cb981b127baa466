/** The pages there are. To add one: a line here, and the page in a folder of its own. An area with a page shows in the top line. */
import type { ComponentType } from "react";
import type { Light } from "./shell/light.ts";

/** What the address holds: `/cases/:case` gives `case`. */
export interface PageProps {
  readonly params: Readonly<Record<string, string | undefined>>;
}

export type Area = "cases" | "apiaries" | "bench" | "season" | "evidence" | "reckoner";

export interface PageRoute {
  readonly path: string;
  readonly area: Area | null;
  /** The light this work asks for. */
  readonly light: Light;
  /** The page fills the screen: no top line. */
  readonly bare?: true;
  readonly load: () => Promise<{ readonly default: ComponentType<PageProps> }>;
}

/** Where an area begins. */
export const areaHome: Readonly<Record<Area, string>> = {
  cases: "/cases",
  apiaries: "/apiaries",
  bench: "/bench",
  season: "/season",
  evidence: "/evidence",
  reckoner: "/reckoner",
};

export const routes: readonly PageRoute[] = [
  { path: "/cases", area: "cases", light: "desk", load: () => import("./cases/CasesPage.tsx") },
  { path: "/cases/open", area: "cases", light: "desk", load: () => import("./cases/OpenCasePage.tsx") },
  { path: "/cases/:case/:question?", area: "cases", light: "desk", load: () => import("./case/CasePage.tsx") },
  { path: "/walk/:case/:key", area: "cases", light: "field", bare: true, load: () => import("./walk/WalkPage.tsx") },
  { path: "/apiaries", area: "apiaries", light: "desk", load: () => import("./apiaries/ApiariesPage.tsx") },
  { path: "/apiaries/:apiary", area: "apiaries", light: "desk", load: () => import("./apiaries/ApiaryPage.tsx") },
  { path: "/bench", area: "bench", light: "bench", load: () => import("./bench/BenchPage.tsx") },
  { path: "/bench/:specimen", area: "bench", light: "bench", bare: true, load: () => import("./bench/VialPage.tsx") },
  { path: "/season", area: "season", light: "desk", load: () => import("./season/SeasonPage.tsx") },
  { path: "/cases/:case/paper/:paper", area: "cases", light: "desk", load: () => import("./paper/PaperPage.tsx") },
  { path: "/reckoner/:method?", area: "reckoner", light: "desk", load: () => import("./reckoner/ReckonerPage.tsx") },
  { path: "/evidence", area: "evidence", light: "desk", load: () => import("./evidence/EvidencePage.tsx") },
  { path: "/evidence/experience", area: "evidence", light: "desk", load: () => import("./own/ExperiencePage.tsx") },
  { path: "/evidence/changes", area: "evidence", light: "desk", load: () => import("./own/ChangesPage.tsx") },
  { path: "/evidence/:kind/:id", area: "evidence", light: "desk", load: () => import("./evidence/EvidencePage.tsx") },
  { path: "/records", area: null, light: "desk", load: () => import("./records/RecordsPage.tsx") },
  { path: "/sign-in", area: null, light: "desk", load: () => import("./account/SignInPage.tsx") },
  { path: "/invitation", area: null, light: "desk", load: () => import("./account/InvitationPage.tsx") },
  { path: "/members", area: null, light: "desk", load: () => import("./account/MembersPage.tsx") },
  { path: "/members/audit", area: null, light: "desk", load: () => import("./account/AuditPage.tsx") },
  { path: "/records/differences", area: null, light: "desk", load: () => import("./records/DifferencesPage.tsx") },
  { path: "/records/apart", area: null, light: "desk", load: () => import("./records/ApartPage.tsx") },
  { path: "/records/table", area: null, light: "desk", load: () => import("./table/BringTablePage.tsx") },
  { path: "/labels", area: null, light: "desk", load: () => import("./labels/LabelsPage.tsx") },
];
