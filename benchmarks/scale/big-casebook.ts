/** A large invented casebook, written by many devices at once: cases with findings, specimens with bees read one by one. */
import { randomBytes } from "node:crypto";
import {
  type Entry,
  type EntryDraft,
  type Head,
  headsOf,
  newEntryId,
  newSalt,
  sealChain,
} from "../../src/journal/index.ts";

export interface Size {
  readonly cases: number;
  readonly specimens: number;
  readonly bees: number;
}

/** What a programme of a large region may come to in ten years; a judgement, no source. */
export const whole: Size = { cases: 10_000, specimens: 50_000, bees: 2_500_000 };

export const shareOf = (share: number): Size => ({
  cases: Math.ceil(whole.cases * share),
  specimens: Math.ceil(whole.specimens * share),
  bees: Math.ceil(whole.bees * share),
});

/** Devices that write. */
export const devices = 16;

const day = "2026-03-16";

function* draftsOf(device: number, { cases, specimens, bees }: Size): Generator<EntryDraft> {
  const perCase = specimens / cases;
  const perSpecimen = Math.round(bees / specimens);
  for (let index = device; index < cases; index += devices) {
    const [apiary, kase] = [`apiary-${index}`, `case-${index}`];
    yield {
      kind: "apiary-registered",
      at: day,
      about: [apiary],
      data: { code: `A${index}`, name: `Apiary ${index}`, place: "invented" },
    };
    yield { kind: "colony-registered", at: day, about: [apiary, `colony-${index}`], data: { code: `${index}-1` } };
    yield {
      kind: "case-opened",
      at: day,
      about: [kase, apiary],
      data: { code: `C-${index}`, openedOn: day, question: "Why do bees crawl?", colonies: [`colony-${index}`] },
    };
    for (let number = 0; number < perCase; number += 1) {
      const specimen = `specimen-${index}-${number}`;
      yield {
        kind: "specimen-labelled",
        at: day,
        about: [specimen, kase, `colony-${index}`],
        data: {
          code: `C-${index}-${number}`,
          case: kase,
          colony: `colony-${index}`,
          takenOn: day,
          from: "S",
          preservative: "ethanol-70",
          purpose: "detect",
        },
      };
      yield {
        kind: "reading-started",
        at: day,
        about: [specimen, `reading-${number}`],
        data: { reading: `reading-${number}`, reader: "reader", on: day, method: "thoracic-disc", target: perSpecimen },
      };
      for (let bee = 1; bee <= perSpecimen; bee += 1)
        yield {
          kind: "bee-read",
          at: `${day}T09:00:00Z`,
          about: [specimen, `reading-${number}`],
          data: {
            reading: `reading-${number}`,
            bee,
            lost: false,
            left: bee % 9 === 0 ? "mites" : "clear",
            right: "clear",
          },
        };
    }
  }
}

/** The entries of one device, in batches, sealed as they are asked for. */
export function* batchesOf(device: number, size: Size, batch: number, programme = "main"): Generator<readonly Entry[]> {
  const name = `device-${String(device).padStart(2, "0")}`;
  let head: Head | null = null;
  let drafts: EntryDraft[] = [];
  const sealed = (): readonly Entry[] => {
    const chances = drafts.map(() => ({
      id: newEntryId(1_773_648_000_000, randomBytes(16)),
      salt: newSalt(randomBytes(16)),
    }));
    const end = { device: name, head, programme, author: "R. Vale", recordedAt: `${day}T09:00:00.000Z` };
    const entries = sealChain(drafts, end, chances);
    head = headsOf(entries.slice(-1))[0] ?? head;
    drafts = [];
    return entries;
  };
  for (const draft of draftsOf(device, size)) {
    drafts.push(draft);
    if (drafts.length === batch) yield sealed();
  }
  if (drafts.length > 0) yield sealed();
}
