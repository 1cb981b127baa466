/** The bytes of a file: from this device, or fetched from the service when someone asks for it. */
import { useCallback, useEffect, useState } from "react";
import type { DeviceFile } from "../../../storage/device.ts";
import { useCasebook } from "../store/context.ts";

export type FileHere =
  | { readonly at: "looking" | "elsewhere" | "fetching" | "not-there" }
  | { readonly at: "here"; readonly file: DeviceFile };

/** `fetched` counts what was fetched on this page: one file may stand in several entries. `onFetched` tells of another. */
export function useFile(
  sha256: string,
  { fetched, onFetched }: { readonly fetched: number; readonly onFetched: () => void },
): { readonly here: FileHere; readonly fetch: () => void } {
  const { file, fetchFile } = useCasebook();
  const [here, setHere] = useState<FileHere>({ at: "looking" });
  const isHere = here.at === "here";
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked for again when another was fetched
  useEffect(() => {
    if (isHere) return undefined;
    let isWanted = true;
    file(sha256)
      .then((found) => isWanted && setHere(found === null ? { at: "elsewhere" } : { at: "here", file: found }))
      .catch(() => isWanted && setHere({ at: "elsewhere" }));
    return () => {
      isWanted = false;
    };
  }, [file, sha256, isHere, fetched]);
  const fetch = useCallback(() => {
    setHere({ at: "fetching" });
    fetchFile(sha256)
      .then((found) => {
        setHere(found === null ? { at: "not-there" } : { at: "here", file: found });
        if (found) onFetched();
      })
      .catch(() => setHere({ at: "not-there" }));
  }, [fetchFile, sha256, onFetched]);
  return { here, fetch };
}

/** An address of the bytes for as long as it is shown; null while there are none. */
export function useAddress(file: DeviceFile | null): string | null {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    if (file === null) return undefined;
    const made = URL.createObjectURL(new Blob([file.bytes], { type: file.mediaType }));
    setAddress(made);
    return () => {
      setAddress(null);
      URL.revokeObjectURL(made);
    };
  }, [file]);
  return address;
}
