/** How many columns of a sheet that is drawn sideways lie past its right edge before it is drawn. */
import { type RefObject, useEffect, useState } from "react";

export function usePastEdge(box: RefObject<HTMLElement | null>): number {
  const [past, setPast] = useState(0);
  useEffect(() => {
    const sheet = box.current;
    if (sheet === null) return;
    const look = () => {
      const heads = [...sheet.querySelectorAll<HTMLElement>("thead th:not(:first-child)")];
      setPast(heads.filter((each) => each.offsetLeft + each.offsetWidth > sheet.clientWidth).length);
    };
    const sized = new ResizeObserver(look);
    sized.observe(sheet);
    for (const each of sheet.children) sized.observe(each);
    return () => sized.disconnect();
  }, [box]);
  return past;
}
