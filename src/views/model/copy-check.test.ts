/** A saved copy is read whole, told apart from what is here, and refused when it belongs elsewhere. */
import { describe, expect, it } from "vitest";
import { set } from "../../../tests/journals/programme-kinds.ts";
import { writer } from "../../../tests/journals/writer.ts";
import { encodeJournal } from "../../journal/index.ts";
import { checkChains, checkCopy } from "./index.ts";

const phone = writer({ device: "phone-9" });
const entries = phone.write(set({ nothingWrong: 0.1 }), set({ nothingWrong: 0.2 }), set({ nothingWrong: 0.3 }));

describe("a saved copy", () => {
  it("brings what is not here yet, and says that it is whole", () => {
    const copy = checkCopy(encodeJournal(entries), entries.slice(0, 1), "main");
    if (!copy.ok) throw new Error("the copy is refused");
    expect([copy.value.fresh.length, copy.value.known]).toEqual([2, 1]);
    expect(copy.value.check).toMatchObject({ checked: 3, devices: 1, faults: [], bodiless: 0 });
  });

  it("with an entry cut out names the first that is missing", () => {
    const [first, , last] = entries;
    if (!first || !last) throw new Error("three entries");
    expect(checkChains([first, last]).faults[0]).toMatchObject({ device: "phone-9", seq: 2, reason: "gap" });
    // To a member who is given a part, a hole in another's chain is none; in his own it is.
    expect(checkChains([first, last], "phone-1")).toMatchObject({ faults: [], holes: 1 });
    expect(checkChains([first, last], "phone-9").faults).toHaveLength(1);
  });

  it("of another programme, empty, or torn in the middle of a line is refused", () => {
    const text = encodeJournal(entries);
    const codes = (given: string, programme = "main") =>
      checkCopy(given, [], programme).problems.map(({ code }) => code);
    expect(codes(text, "other")).toEqual(["copy-of-another-programme"]);
    expect(codes(encodeJournal([]))).toEqual(["copy-empty"]);
    expect(codes("")).toEqual(["not-a-journal"]);
    expect(codes(text.slice(0, -40))).not.toEqual([]);
    expect(codes("a spreadsheet, perhaps")).not.toEqual([]);
  });
});
