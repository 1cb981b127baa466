/** Papers: nothing that was typed can break out of its place, labels stand where the sheet has them, codes stand beside their symbols. */
import { describe, expect, it } from "vitest";
import { labelStocks, type Report, type VialLabel } from "../model/index.ts";
import { html } from "./html.ts";
import { kitCardPaper, labelPaper, reportPaper } from "./index.ts";

const label = (code: string): VialLabel => ({
  code,
  colony: "WB-07",
  takenOn: "2026-03-16",
  from: "E honey, pollen edge",
  keptIn: "70 % ethanol",
});
const sheet = (count: number, used = 0) => ({
  stock: labelStocks[0] ?? expect.fail("no stock"),
  caseCode: "TV-26-014",
  title: "Kit",
  labels: Array.from({ length: count }, (_, index) => label(`TV26-${String(index).padStart(4, "0")}-A`)),
  used,
  isDemonstration: false,
});

const report: Report = {
  code: "TV26-R-0031",
  caseCode: "TV-26-014",
  place: "Withen Bank",
  area: "Tarrow Valley",
  colonies: "12 colonies",
  sampledOn: "2026-03-03",
  printedOn: "2026-03-06",
  asked: "Are there mites?",
  answer: { heavy: "Mites in one colony.", rest: "17 of 50 bees." },
  below: [],
  picture: { colony: "WB-07", value: 34, low: 21.2, high: 48.8 },
  rows: [
    {
      code: "TV26-0147-K",
      colony: "WB-07",
      from: "E",
      condition: "0 firm",
      read: "50 of 52",
      withMites: "17",
      estimate: { value: 34, low: 21.2, high: 48.8 },
      isLimited: false,
    },
  ],
  lines: [15, 30, 50],
  stops: [],
  signs: [{ colony: "WB-07", says: "Present: crawling bees." }],
  causes: [
    {
      colony: "WB-07",
      season: "Looked at until 3 March 2026, in spring.",
      verdict: "Leading.",
      notes: ["Left out."],
      rows: [{ term: "A", number: "5", range: "3 to 7", word: "likely" }],
    },
  ],
  done: [{ on: "8 August 2026", what: "Apply, 150 g in all, 50 g a colony." }],
  effect: {
    groups: [{ name: "Treated: WB-07", before: "20 of 50", after: "5 of 50" }],
    methods: [{ name: "Against the untreated", value: "50", range: "−56 to 84", rule: "EF1" }],
    says: ["Dead mites stay."],
  },
  howRead: "Both trunks.",
  missed: [],
  toDo: [],
  heed: [],
  rules: "Exact, 95 in 100.",
  heads: ["device a, entry 4"],
  isDemonstration: false,
};

const count = (text: string, part: string): number => text.split(part).length - 1;

describe("papers", () => {
  it("escape what people typed, in text and in attributes", () => {
    const typed = `<script>alert("x")</script>' & co`;
    expect(html`<p title="${typed}">${typed}</p>`.html).not.toMatch(/<script|"x"/);
    expect(reportPaper({ ...report, asked: typed, place: typed }).body).not.toContain("<script>alert");
    expect(reportPaper({ ...report, place: '"; } body { display: none' }).pageCss).not.toContain('content: ""; }');
  });

  it("print each specimen three times: vial, sheet, spare", () => {
    const { body } = labelPaper(sheet(11));
    expect(count(body, 'class="vial"')).toBe(33);
    for (const use of ["vial", "sheet", "spare"]) expect(count(body, `>${use}</span>`)).toBe(11);
  });

  it("put the first and the last label of a sheet where the stock has them", () => {
    const { body, css } = labelPaper(sheet(22));
    expect(css).toContain("left: 4.7mm; top: 10.9mm");
    // 65 labels of the A4 sheet: five columns of 38.1 mm at a pitch of 40.6, rows of 21.2 mm without a gap.
    expect(css).toContain("repeat(5, 38.1mm)");
    expect(css).toContain("column-gap: 2.50mm; row-gap: 0.00mm");
    expect(count(body, 'class="page"')).toBe(2);
    const [first = "", second = ""] = body.split("<ul>").slice(1);
    expect([count(first, "<li>"), count(second, "<li>")]).toEqual([65, 1]);
  });

  it("start at the first free label of a used sheet", () => {
    const { body } = labelPaper(sheet(1, 7));
    expect(body).toMatch(/^.*<ul>(<li><\/li>){7}<li><div class="vial">/);
    expect(count(body, "<li>")).toBe(10);
    expect(body).toContain("Next free label: 11");
  });

  it("carry no inline style, so that a strict content policy lets them through", () => {
    for (const { body } of [labelPaper(sheet(3)), reportPaper(report)]) expect(body).not.toMatch(/\sstyle=/);
  });

  it("all labels of a stock lie on its page", () => {
    for (const stock of labelStocks) {
      const [width, height] = stock.page === "A4" ? [210, 297] : [215.9, 279.4];
      expect(stock.left + (stock.columns - 1) * stock.pitchX + stock.width).toBeLessThanOrEqual(width);
      expect(stock.top + (stock.rows - 1) * stock.pitchY + stock.height).toBeLessThanOrEqual(height);
    }
  });

  it("the code stands in letters beside every 2-D symbol", () => {
    const { body } = labelPaper(sheet(3));
    for (const code of ["TV26-0000-A", "TV26-0002-A"]) {
      expect(count(body, `aria-label="2-D code: ${code}"`)).toBe(3);
      expect(count(body, `>${code}</b>`)).toBe(3);
    }
  });

  it("the report fills 34 of 100 squares and dots the range from 21 to 49", () => {
    const { body } = reportPaper(report);
    expect(count(body, 'height="4.3" fill="#000"')).toBe(34);
    expect(count(body, "<circle")).toBe(49 - 21);
  });

  it("parts that have nothing to say are left out, and their numbers run on without a gap", () => {
    const numbers = (of: Report) =>
      [...reportPaper(of).body.matchAll(/<h2><span>(\d+)<\/span>/g)].map((match) => Number(match[1]));
    expect(numbers(report)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(reportPaper(report).body).toContain("Parts 6 and 9 are opinion.");
    const bare = { ...report, rows: [], picture: null, signs: [], causes: [], done: [], effect: null };
    expect(numbers(bare)).toEqual([1, 2, 3, 4, 5]);
    expect(reportPaper(bare).body).toContain("Part 4 is opinion.");
  });

  it("tells signs, ranked causes with ranges, doses given and the fall against the untreated", () => {
    const { body } = reportPaper(report);
    for (const said of ["crawling bees", "3 to 7", "150 g in all, 50 g a colony", "−56 to 84", "Dead mites stay."])
      expect(body).toContain(said);
  });

  it("a stop stands at the head of the report, before what was asked", () => {
    const { body } = reportPaper({ ...report, stops: ["Stop and report: American foulbrood."] });
    expect(body.indexOf("Stop and report")).toBeGreaterThan(-1);
    expect(body.indexOf("Stop and report")).toBeLessThan(body.indexOf("<header"));
    expect(reportPaper(report).body).not.toContain("Stop and report");
  });

  it("a demonstration says so on every paper", () => {
    const kit = {
      caseCode: "A",
      place: "B",
      laboratory: "own bench",
      question: "?",
      rows: [],
      colonies: ["A-1", "A-2"],
      looks: [{ term: "Crawling bees", how: "Bees on the ground <that> cannot fly." }],
      tests: [{ term: "Spore count", specimen: "30 older bees." }],
      steps: [],
      promise: "",
      stops: ["Stop and report: American foulbrood."],
      isInAlcohol: false,
      cautions: [],
    };
    expect(kitCardPaper({ ...kit, isDemonstration: false }).body).toContain("Stop and report: American foulbrood.");
    expect(kitCardPaper({ ...kit, isDemonstration: false }).body).not.toContain("Alcohol drained");
    const looks = kitCardPaper({ ...kit, isDemonstration: false }).body;
    expect(looks).toContain('<th class="room">A-1</th><th class="room">A-2</th>');
    // Every colony has room for its answer, on further tables where one is full.
    const many = Array.from({ length: 19 }, (_, index) => `B-${index + 1}`);
    const all = kitCardPaper({ ...kit, colonies: many, isDemonstration: false }).body;
    for (const code of many) expect(all).toContain(`<th class="room">${code}</th>`);
    expect(all.split("Bees on the ground").length - 1).toBe(1);
    expect(looks).toContain("Bees on the ground &lt;that&gt; cannot fly.");
    expect(looks).toContain("<b>Spore count</b>: 30 older bees.");
    expect(kitCardPaper({ ...kit, looks: [], tests: [], isDemonstration: false }).body).not.toContain("Look for");
    const said = "Invented case, for demonstration";
    expect(labelPaper({ ...sheet(1), isDemonstration: true }).body).toContain(said);
    expect(kitCardPaper({ ...kit, isDemonstration: true }).body).toContain(said);
    expect(reportPaper({ ...report, isDemonstration: true }).body).toContain(said);
    expect(kitCardPaper({ ...kit, isDemonstration: false }).body).not.toContain(said);
  });
});
