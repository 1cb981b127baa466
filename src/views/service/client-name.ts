/** What a browser says it is, in a few words: enough to know one's own session by, and no more. */

const browsers = [
  [/\bEdg(e|A|iOS)?\//, "Edge"],
  [/\b(Firefox|FxiOS)\//, "Firefox"],
  [/\b(Chrome|CriOS|HeadlessChrome|Chromium)\//, "Chrome or Chromium"],
  [/\bSafari\//, "Safari"],
] as const;

const systems = [
  [/Android/, "Android"],
  [/iPhone|iPad/, "iOS"],
  [/Windows/, "Windows"],
  [/Mac OS X/, "macOS"],
  [/Linux/, "Linux"],
] as const;

const first = (names: readonly (readonly [RegExp, string])[], text: string): string | undefined =>
  names.find(([pattern]) => pattern.test(text))?.[1];

/** Browser and system; "a program" when it is no browser that is known. */
export function clientName(userAgent: string | undefined): string {
  const [browser, system] = [first(browsers, userAgent ?? ""), first(systems, userAgent ?? "")];
  if (browser === undefined) return "a program";
  return system === undefined ? browser : `${browser} on ${system}`;
}
