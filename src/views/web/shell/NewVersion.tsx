/** A quiet line when a newer page is ready. Never taken by itself, never offered while bees are counted. */
import { useEffect, useState } from "react";
import { words } from "../words.ts";

type Take = () => void;

export function NewVersion({ counting }: { readonly counting: boolean }) {
  const [take, setTake] = useState<Take | null>(null);
  useEffect(() => {
    let here = true;
    void import("virtual:pwa-register").then(({ registerSW }) => {
      const update = registerSW({ onNeedRefresh: () => here && setTake(() => () => void update(true)) });
    });
    return () => {
      here = false;
    };
  }, []);
  if (!take || counting) return null;
  return (
    <p className="quiet-line" role="status">
      {words.shell.newVersion}{" "}
      <button type="button" className="act" onClick={take}>
        {words.shell.takeNewVersion}
      </button>
    </p>
  );
}
