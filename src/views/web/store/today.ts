/** The reader's calendar day, which changes at midnight of the place. */
import { useEffect, useState } from "react";
import type { Day } from "../../../units/index.ts";

/** Today by the device's clock and time zone. */
export function localDay(now: Date = new Date()): Day {
  const two = (number: number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** The clock time of an instant, such as 16:42, in the device's time zone. */
export function localTime(instant: string): string {
  const at = new Date(instant);
  return `${String(at.getHours()).padStart(2, "0")}:${String(at.getMinutes()).padStart(2, "0")}`;
}

/** Today; looked at again each minute and whenever the page comes to the front. */
export function useToday(): Day {
  const [today, setToday] = useState(localDay);
  useEffect(() => {
    const look = () => setToday(localDay());
    const timer = setInterval(look, 60_000);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", look);
    };
  }, []);
  return today;
}
