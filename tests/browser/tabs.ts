/** A page walked by the tab key alone: what the key reaches, what it does not, and whether one sees where one stands. */
import type { Page } from "playwright-core";

/** Everything that can be acted on and that the tab key does not reach, or reaches without a mark; as lines to read. */
export async function beyondTheTabKey(page: Page): Promise<readonly string[]> {
  const stops = await page.evaluate(() => {
    const described = (element: Element) => {
      const html = element.cloneNode(false) as Element;
      return `${html.outerHTML.slice(0, 120)} ${element.textContent?.trim().slice(0, 40) ?? ""}`;
    };
    const isShown = (element: Element) =>
      element.checkVisibility({ visibilityProperty: true }) && !(element as HTMLButtonElement).disabled;
    const isStop = (element: Element) => {
      if (!isShown(element) || (element as HTMLElement).tabIndex < 0) return false;
      // Of radio buttons with one name the tab key stops at one.
      if (!(element instanceof HTMLInputElement) || element.type !== "radio") return true;
      const group = [...document.querySelectorAll<HTMLInputElement>('input[type="radio"]')].filter(
        (radio) => radio.name === element.name && isShown(radio),
      );
      return element === (group.find((radio) => radio.checked) ?? group[0]);
    };
    const wanted = new Set(
      [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")].filter(isStop),
    );
    const walked: { readonly reached: Set<Element>; readonly unmarked: Set<Element> } = {
      reached: new Set(),
      unmarked: new Set(),
    };
    const onFocus = (event: FocusEvent) => {
      const element = event.target as Element;
      walked.reached.add(element);
      const { boxShadow, outlineStyle } = getComputedStyle(element);
      if (boxShadow === "none" && outlineStyle === "none") walked.unmarked.add(element);
    };
    document.addEventListener("focusin", onFocus);
    (document.activeElement as HTMLElement | null)?.blur();
    Object.assign(window, {
      walkedByTab: () => {
        document.removeEventListener("focusin", onFocus);
        return [
          ...[...wanted].filter((each) => !walked.reached.has(each)).map((each) => `not reached: ${described(each)}`),
          ...[...walked.unmarked].map((each) => `no mark where one stands: ${described(each)}`),
        ];
      },
    });
    return wanted.size;
  });
  // A date has three stops within one field.
  const dates = await page.locator('input[type="date"]:visible').count();
  for (let stop = 0; stop < stops + 3 * dates + 2; stop += 1) await page.keyboard.press("Tab");
  return page.evaluate(() => (window as unknown as { walkedByTab: () => readonly string[] }).walkedByTab());
}
