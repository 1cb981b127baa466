/**
 * The sheet of vial labels of a case.
 *
 * @module views/model
 */
import { type Casebook, specimensOf } from "../../../casebook/index.ts";
import type { PaperWords } from "../../words/index.ts";
import { colonyCode, labelOf, placeName, receiptOf } from "../bench/worklist.ts";
import { type LabelSheet, type LabelStock, labelStocks, type VialLabel } from "../paper.ts";

export interface LabelWish {
  readonly stock: LabelStock;
  /** The first free label on the first sheet, 1 when it is whole. */
  readonly startAt: number;
  /** Only vials that have not come to the bench yet. */
  readonly onlyWaiting: boolean;
}

/** The stock with this id, or the first one. */
export const stockOf = (id: string | null): LabelStock =>
  labelStocks.find((stock) => stock.id === id) ?? labelStocks[0];

/** Whether a case has vials that have not come yet. */
export const hasVialsToCome = (casebook: Casebook, caseId: string): boolean =>
  specimensOf(casebook, caseId).some((specimen) => receiptOf(specimen) === null);

/** The labels of a case on the stock wished for. */
export function labelSheet(
  casebook: Casebook,
  caseId: string,
  asked: { readonly wish: LabelWish; readonly words: PaperWords; readonly isDemonstration: boolean },
): LabelSheet {
  const { wish, words, isDemonstration } = asked;
  const perPage = wish.stock.columns * wish.stock.rows;
  const labels = specimensOf(casebook, caseId)
    .filter((specimen) => !wish.onlyWaiting || receiptOf(specimen) === null)
    .flatMap((specimen): VialLabel[] => {
      const label = labelOf(specimen);
      if (!label) return [];
      return [
        {
          code: label.code,
          colony: colonyCode(casebook, caseId, label.colony),
          takenOn: label.takenOn,
          from: words.paper.from[label.from],
          keptIn: words.bench.keptIn[label.preservative],
        },
      ];
    });
  return {
    stock: wish.stock,
    caseCode: casebook.cases[caseId]?.record?.candidates[0].value.code ?? "",
    title: words.paper.sheetTitle(placeName(casebook, caseId), labels.length),
    labels,
    used: Math.min(Math.max(Math.round(wish.startAt) - 1, 0), perPage - 1),
    isDemonstration,
  };
}
