/** Menthol against tracheal mites: what sources report. */
import { commonPractice, computed, seen } from "../cite.ts";
import { doseReport, figure, span } from "../figure.ts";
import type { ControlFact } from "./control-fact.ts";

/** Menthol crystals and pastes. */
export const menthol = {
  id: "menthol",
  term: "Menthol vapour",
  kind: "vapour",
  activeIngredients: ["menthol"],
  needsLabelRecord: true,
  cautions: ["label-is-law", "honey-supers-off", "temperature-window", "menthol-vapour"],
  statements: [
    {
      topic: "dose-reported",
      words: "Trials gave 50 g of crystals (1.8 oz) in a bag of screen or nylon.",
      figure: doseReport([50, 50], "g per colony", seen("beebook-tracheal", "5.3")),
      citations: [seen("beebook-tracheal", "5.3"), seen("herbert-1988", "abstract")],
    },
    {
      topic: "placement",
      words: "On the top bars; one text moves it to the bottom board when days reach the 80s °F.",
      figure: null,
      citations: [seen("beebook-tracheal", "5.3"), seen("california-menthol", "secondary")],
    },
    {
      topic: "temperature",
      words: "At least 15 °C outside, and even then about two weeks to fill the hive.",
      figure: figure(15, "°C", seen("kevan-1999", "abstract, citing others")),
      citations: [seen("kevan-1999", "abstract, citing others")],
    },
    {
      topic: "temperature",
      words: "Control began only when days passed 21 °C (70 °F).",
      figure: figure(21, "°C", seen("herbert-1988", "abstract")),
      citations: [seen("herbert-1988", "abstract")],
    },
    {
      topic: "temperature",
      words: "Above about 32 °C (90 °F) bees and queen are driven out, and queen and brood can be lost.",
      figure: figure(32, "°C", seen("california-menthol", "secondary")),
      citations: [seen("california-menthol", "secondary"), seen("beebook-tracheal", "5.3: bees hang out, take it out")],
    },
    {
      topic: "temperature",
      words: "Leaflets of sellers: 65 °F or more, best at 80 to 85 °F; melts at 102 to 105 °F.",
      figure: null,
      citations: [commonPractice("leaflets", "vendor-menthol-sheets")],
    },
    {
      topic: "no-benefit",
      words: "In the cold the vapour is too weak to work.",
      figure: null,
      citations: [seen("beebook-tracheal", "5.3, after Scott-Dupree and Otis 1992"), seen("kevan-1999", "abstract")],
    },
    {
      topic: "duration",
      words: "Sources disagree: 14 days, 15 or more, 20 to 25, 28 or more.",
      figure: span(
        [14, 28],
        "days",
        seen("california-menthol", "20–25 days; leaflets and a popular book say otherwise"),
      ),
      citations: [
        seen("california-menthol", "20–25 days"),
        commonPractice("15 days or more; 28 days or more; 14 days", "vendor-menthol-sheets"),
      ],
    },
    {
      topic: "speed",
      words: "In Texas 85 % of mites were dead in 3 days and all in 4 weeks; a packet lasted 2 to 3 weeks.",
      figure: span([2.4, 3.6], "g per day lost", computed("50 g in 14 to 21 days", "collison-1988")),
      citations: [seen("collison-1988", "text"), computed("50 g in 14 to 21 days", "collison-1988")],
    },
    {
      topic: "supers",
      words: "None on; leaflets end it 2 weeks or more before a flow, a popular book waits 3 to 4 weeks after.",
      figure: null,
      citations: [commonPractice("leaflets, popular book", "vendor-menthol-sheets")],
    },
    {
      topic: "placement",
      words: "Leaflets of sellers: one or two deep boxes and a reduced entrance, for the vapour is heavier than air.",
      figure: null,
      citations: [commonPractice("leaflets", "vendor-menthol-sheets")],
    },
    {
      topic: "placement",
      words: "In cool Canada cardboard soaked in menthol and vegetable shortening works well.",
      figure: null,
      citations: [seen("beebook-tracheal", "5.3")],
    },
    {
      topic: "efficacy",
      words: "In none of 8 colonies was a mite found at the end of 14 weeks, after a second packet.",
      figure: null,
      citations: [seen("herbert-1988", "abstract")],
    },
    {
      topic: "efficacy",
      words: "Foam, paste and cardboard: below 1 % infested by the end of August against 25 % in the untreated.",
      figure: span([96, null], "percent lower", computed("below 1 against 25 %", "nelson-1993")),
      citations: [seen("nelson-1993", "abstract"), computed("below 1 against 25 %", "nelson-1993")],
    },
    {
      topic: "no-benefit",
      words: "Greece, twice a year from 11.25 %: fell as much as in the untreated (10.75 %).",
      figure: null,
      citations: [seen("bacandritsos-2004", "abstract")],
    },
    {
      topic: "residue",
      words: "Honey of the brood nest 0.8 to 6.2 ppm by form; none detectable in honey of the supers.",
      figure: span([0.8, 6.2], "ppm", seen("nelson-1993", "abstract")),
      citations: [seen("nelson-1993", "abstract")],
    },
    {
      topic: "side-effect",
      words: "Brood died for a few days; honey crops were lower on the whole, some clearly.",
      figure: null,
      citations: [seen("nelson-1993", "abstract")],
    },
    {
      topic: "side-effect",
      words: "Number of bees, flight, honey and sealed brood did not differ from the untreated.",
      figure: null,
      citations: [seen("canadian-acaricides-1999", "abstract")],
    },
    {
      topic: "margin",
      words:
        "As a fumigant 18.9 times more toxic to mite than bee at LC50, only 5.7 times at LC90: too much eats the margin.",
      figure: span([5.7, 18.9], "times", seen("ellis-baxendale-1997", "abstract")),
      citations: [seen("ellis-baxendale-1997", "abstract")],
    },
    {
      topic: "resistance",
      words: "Routine use raises the risk of resistant mites.",
      figure: null,
      citations: [seen("frazier-2000", "abstract, first part")],
    },
  ],
} as const satisfies ControlFact<"menthol">;
