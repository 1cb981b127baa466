/**
 * What a season's forecast rests on, as two tables: published figures beside the model's, and how often ranges hold.
 *
 * @module views/model
 */
import { dynamics } from "../../../reasoning/index.ts";
import { seasonTrustWords } from "../../words/index.ts";

export interface TrustTable {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface TrustView {
  readonly checks: TrustTable;
  readonly ranges: TrustTable;
  readonly rangesUnder: string;
}

/** Both tables; the model's figures are reckoned anew. */
export function trustView(): TrustView {
  const say = seasonTrustWords;
  const per100 = (share: number) => String(Number((100 * share).toFixed(1)));
  return {
    checks: {
      columns: Object.values(say.columns),
      rows: dynamics
        .publishedChecks()
        .map(({ id, status, source, published, unit, model }) => [
          say.what[id],
          published === null ? say.direction : say.published({ ...published, unit }),
          say.model({ values: model, unit }),
          say.status[status],
          source ?? say.noSource,
        ]),
    },
    ranges: {
      columns: Object.values(say.rangeColumns),
      rows: dynamics.calibrationFigures.map((each) => [
        each.bees === 0 ? say.none({ guess: dynamics.calibrationGuess }) : String(each.bees),
        String(each.within90),
        String(each.within50),
        `${each.chiSquare}, ${each.chance}`,
        per100(each.width90),
        String(each.crps),
        per100(each.middleOff),
        per100(each.lastCountOff),
      ]),
    },
    rangesUnder: say.rangesUnder({ colonies: dynamics.calibrationColonies }),
  };
}
