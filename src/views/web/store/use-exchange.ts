/** The exchange with the service in the background: now and then, and soon after something was written or the net came back. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { DeviceStore } from "../../../storage/device.ts";

export function useExchange(_store: DeviceStore): { readonly refused: number; readonly soon: () => void } {
  const [refused] = useState(0);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(timer.current), []);
  const soon = useCallback(() => {}, []);
  return { refused, soon };
}
