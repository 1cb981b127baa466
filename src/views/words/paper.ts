/** Words on paper. */

const months = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** A day as papers write it: 9 March 2026. */
export function longDay(day: string): string {
  const [year, month, date] = day.split("-").map(Number);
  return `${date ?? ""} ${months[(month ?? 1) - 1] ?? ""} ${year ?? ""}`;
}

const whole = (share: number): string => String(Math.round(share));

export const paperWords = {
  invented: "Invented case, for demonstration",
  use: { vial: "vial", sheet: "sheet", spare: "spare" },
  page: (page: number, pages: number): string => `Page ${page} of ${pages}`,
  printAtFullSize: "Print at 100 %, no fitting. Write the slip inside the vial in pencil.",
  nextFreeLabel: (next: number, perPage: number): string =>
    next > perPage ? "This sheet is full" : `Next free label: ${next}`,
  kit: {
    title: "Kit card",
    forLaboratory: "For:",
    asked: "We ask",
    vials: "Vials",
    code: "Code",
    colony: "Colony",
    from: "Take bees from",
    bees: "Bees",
    takenOn: "Taken on",
    by: "By",
    how: "How",
    heed: "Heed",
    handOver: "Hand-over",
    sentBy: "Sent by:",
    sentOn: "Sent on:",
    drained: "Alcohol drained: yes / no",
    receivedBy: "Received by:",
    receivedOn: "Received on:",
    countMatches: "Vials as listed: yes / no",
  },
  report: {
    title: "Diagnostic report",
    caseLine: "Case",
    issued: (on: string, version: number): string => `Issued ${longDay(on)}. Version ${version}`,
    sampled: "sampled",
    asked: "We were asked",
    found: "We found",
    looked: "We looked at",
    missed: "We could have missed",
    opinion: "Opinion: what to do",
    heed: "Heed",
    rules: "Rules of this report",
    heads: "Rests on the journal up to:",
    endOfReport: "Results relate only to the bees received. Part 5 is opinion. End of report.",
    specimen: "Specimen",
    colony: "Colony",
    from: "From",
    condition: "Condition",
    read: "Read",
    withMites: "With mites",
    inHundred: "In 100",
    noEstimate: "not read",
    range: (value: number, low: number, high: number): string => `${value} (${low} to ${high})`,
    lines: (lines: readonly number[]): string => (lines.length > 0 ? `lines at ${lines.join(", ")} in 100` : "in 100"),
    squares: (picture: { value: number; low: number; high: number }): string =>
      `100 squares: ${whole(picture.value)} black, the best estimate; the range runs from ${whole(picture.low)} to ${whole(picture.high)}`,
    squaresKey: (picture: { colony: string; value: number; low: number; high: number }): string =>
      `100 bees of ${picture.colony}. Black: the ${whole(picture.value)} we expect. Dots: the range, ${whole(picture.low)} to ${whole(picture.high)}.`,
  },
} as const;
