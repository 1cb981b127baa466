/** The frame around every page: light, top line, the page of the address, and what to say when there is none. */
import { type ReactNode, Suspense, useEffect, useLayoutEffect } from "react";
import { Redirect, Route, Switch, useLocation } from "wouter";
import { fetchWhenIdle, lazily, Shown } from "../parts/lazily.tsx";
import { Missing } from "../parts/Missing.tsx";
import { type PageRoute, routes } from "../routes.ts";
import { words } from "../words.ts";
import { Account } from "./Account.tsx";
import { Broken } from "./Broken.tsx";
import { KeepingNotes, Kept, NotKept } from "./Kept.tsx";
import { LightChoice } from "./LightChoice.tsx";
import { type Light, putLight, useChosenLight } from "./light.ts";
import { NewVersion } from "./NewVersion.tsx";
import { SaveJournal } from "./SaveJournal.tsx";
import { TopLine } from "./TopLine.tsx";

const pages = routes.map((route) => ({ route, page: lazily(route.load) }));

/** The frame of one page. Only one is on the screen, so it may set the light of the whole. */
function Frame({
  route,
  children,
}: {
  readonly route: Pick<PageRoute, "path" | "area" | "light" | "bare">;
  readonly children: ReactNode;
}) {
  const chosen = useChosenLight();
  const light: Light = chosen ?? route.light;
  const [address] = useLocation();
  useLayoutEffect(() => putLight(light), [light]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new address begins at its top
  useEffect(() => {
    window.scrollTo(0, 0);
  }, [address]);
  return (
    <>
      {route.bare ? null : (
        <TopLine
          area={route.area}
          kept={
            <>
              <Kept />
              <SaveJournal />
              <Account />
            </>
          }
          light={<LightChoice chosen={chosen} byWork={route.light} />}
        />
      )}
      {route.bare ? null : (
        <aside aria-label={words.shell.notes}>
          <NewVersion counting={light === "bench"} />
          <KeepingNotes atHome={route.path === "/cases"} />
        </aside>
      )}
      <NotKept />
      <Broken page={address}>
        <Suspense fallback={<p className="plain busy">{words.shell.opening}</p>}>{children}</Suspense>
      </Broken>
    </>
  );
}

export function App() {
  useEffect(() => fetchWhenIdle(pages.map(({ page }) => page)), []);
  return (
    <Switch>
      <Route path="/">
        <Redirect to="/cases" replace />
      </Route>
      {pages.map(({ route, page }) => (
        <Route key={route.path} path={route.path}>
          {(params) => (
            <Frame route={route}>
              <Shown key={route.path} page={page} props={{ params }} />
            </Frame>
          )}
        </Route>
      ))}
      <Route>
        <Frame route={{ path: "", area: null, light: "desk" }}>
          <Missing text={words.shell.notFound} />
        </Frame>
      </Route>
    </Switch>
  );
}
