/** The frame around every page: light, top line, the page of the address, and what to say when there is none. */
import { lazy, type ReactNode, Suspense, useEffect, useLayoutEffect } from "react";
import { Link, Redirect, Route, Switch, useLocation } from "wouter";
import { Answer } from "../parts/Answer.tsx";
import { type PageRoute, routes } from "../routes.ts";
import { words } from "../words.ts";
import { Broken } from "./Broken.tsx";
import { KeepingNotes, Kept } from "./Kept.tsx";
import { LightChoice } from "./LightChoice.tsx";
import { type Light, putLight, useChosenLight } from "./light.ts";
import { NewVersion } from "./NewVersion.tsx";
import { TopLine } from "./TopLine.tsx";

const pages = routes.map((route) => ({ route, Page: lazy(route.load) }));

/** The frame of one page. Only one is on the screen, so it may set the light of the whole. */
function Frame({
  route,
  children,
}: {
  readonly route: Pick<PageRoute, "area" | "light" | "bare">;
  readonly children: ReactNode;
}) {
  const chosen = useChosenLight();
  const light: Light = chosen ?? route.light;
  const [address] = useLocation();
  useLayoutEffect(() => putLight(light), [light]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new address begins at its top
  useEffect(() => void window.scrollTo(0, 0), [address]);
  return (
    <>
      {route.bare ? null : (
        <TopLine area={route.area} kept={<Kept />} light={<LightChoice chosen={chosen} byWork={route.light} />} />
      )}
      <NewVersion counting={light === "bench"} />
      {route.bare ? null : <KeepingNotes />}
      <Broken page={address}>
        <Suspense fallback={<p className="plain busy">{words.shell.opening}</p>}>{children}</Suspense>
      </Broken>
    </>
  );
}

export function App() {
  return (
    <Switch>
      <Route path="/">
        <Redirect to="/cases" replace />
      </Route>
      {pages.map(({ route, Page }) => (
        <Route key={route.path} path={route.path}>
          {(params) => (
            <Frame route={route}>
              <Page params={params} />
            </Frame>
          )}
        </Route>
      ))}
      <Route>
        <Frame route={{ area: null, light: "desk" }}>
          <main id="page" className="plain">
            <Answer text={words.shell.notFound} />
            <p>
              <Link className="act" href="/cases">
                {words.shell.toCases}
              </Link>
            </p>
          </main>
        </Frame>
      </Route>
    </Switch>
  );
}
