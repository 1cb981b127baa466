/** Figures of this step that nobody has measured: all judgement, in one place, so that they can be argued with. */

/**
 * How strongly findings of one group go together. At 0.7 a second finding of a group that tells as much as the first
 * adds about three tenths of its bits: the weight the judges gave it. Judgement.
 */
export const groupDependence = 0.7;

/** The viruses that varroa carries are this many times as frequent in a colony with mite disease. Judgement. */
export const virusWithVarroaRatio = 4;

/** What circumstances may do to the odds of a condition: one alone, and all together; as much down as up. Judgement. */
export const circumstanceLimits = { one: 10, together: 30 } as const;

/**
 * Standard deviations of the draws: of a grade on the logit scale, where it is a beta share with the stated grade as its
 * mean; of prior odds and of carriage in logs. Judgement.
 *
 * Grades lie about 1.4 apart on that scale. A grade whose belonging is cited lies in its own band, 0.7 to either side, in
 * 95 of 100 draws; one on judgement alone in 84.
 */
export const spread = { grade: 0.5, citedGrade: 0.35, priorOdds: 0.4, carriage: 0.5 } as const;

/** Draws behind every range, and the shares of them that bound it. */
export const ranges = { draws: 400, fewest: 40, most: 5000, low: 0.05, high: 0.95 } as const;

/** When a condition may be named, and when a primary cause still stands in the way of a secondary one. Judgement. */
export const defaultThresholds = {
  /** The lower end of the range must exceed it. */
  leading: 0.5,
  /** A cause at or above it is open. */
  open: 0.1,
} as const;

/** A reason smaller than this, in bits, is not listed. Judgement. */
export const smallestReason = 0.01;

/** Specificity of a found-or-not test whose record says "about 1" without a figure. Judgement. */
export const specificityAboutOne = 0.99;

/** Share of colonies that carry an agent without clinical signs, per clinical one, where the agent lives. Judgement. */
export const carriersPerClinical = { tracheal_mites: 10 } as const;

/** At most this share of colonies carries tracheal mites below the clinical level. Judgement. */
export const mostCarriers = 0.5;

/** Share of colonies without mite disease that still carry varroa. Judgement, after 85 to 97 % of US apiaries. */
export const varroaCarriers = { present: 0.9, absent: 0.02 } as const;

/**
 * Share of bees in which mites are found, by level, as beta shapes; none: a bee taken for positive by mistake.
 * Drawn to the bands: below 15 % background, 15 to 30 % grey, from 30 % clinical, in the cold season; in summer young
 * bees dilute the share. Judgement.
 */
export const trachealShare = {
  mistaken: 0.001,
  background: { a: 1.5, b: 20 },
  clinical: { a: 4, b: 5 },
  clinicalInSummer: { a: 1.5, b: 5 },
} as const;

/**
 * Mites on 100 bees, by level, as gamma shape and mean; none: a mite that came by chance.
 * Drawn to the bands: below 3 background, from 5 clinical. Judgement.
 */
export const varroaLoad = {
  strayPerHundred: 0.02,
  background: { shape: 1, mean: 1.2 },
  clinical: { shape: 2, mean: 10 },
} as const;

/** Probability that a sample shows nothing whatever the level, for each thing that weakens it. Judgement. */
export const weakSample = {
  summer: 0.4,
  "dead-when-taken": 0.5,
  "after-control": 0.5,
  "out-of-season": 0.8,
  "wrong-bees": 0.5,
  "kept-dry": 0.5,
} as const;

/** Residues fall to half in two days after the first: 0.8 found if frozen within a day, 0.4 at three. Judgement. */
export const residueHalfLife = { sureDays: 1, halvedEvery: 2, unsaidDays: 2 } as const;

/** A control this many days ago or less still weakens a count. Judgement: one label period and the bees' turnover. */
export const controlWeakensDays = 42;

/** Fewer bees than this make "none found" a weak answer. Judgement, at 30 bees 5 % infested is missed 1 time in 5. */
export const fewBees = 30;

/**
 * Nosema spores as two questions, one after the other: any spores, and if so one million a bee or more.
 * `healthy` after 47 to 60 % of US apiaries with spores; the rest judgement.
 */
export const sporeRates = {
  lineMillions: 1,
  any: { healthy: 0.5, clinical: 0.97 },
  overLine: { healthy: 0.25, clinical: 0.8 },
} as const;

/**
 * Probability that a test finds each cause, and `healthy`: that it finds it all the same where the cause does no harm.
 * An agent is often present without being the cause, so `healthy` is what carriage and false alarms together bring.
 * All judgement unless said; a figure of the knowledge stands in the test's own record and is taken from there.
 */
export const foundRates = {
  /** No figure is known. Judged between the strips and the matchstick; pollen and other enzymes clear milk too. */
  "milk-test": { rates: { american_foulbrood: 0.8 }, healthy: 0.1 },
  /** European foulbrood 0.974 (efb-us-2021); American foulbrood judged a little lower. */
  "smear-microscopy": { rates: { european_foulbrood: 0.974, american_foulbrood: 0.9 }, healthy: 0.02 },
  /** Spores without signs are background: judged to be in one colony of seven where the disease does not show. */
  "culture-pcr": { rates: { american_foulbrood: 0.97 }, healthy: 0.15 },
  /** In 89 to 95 % of 322 colonies in Hawaii without losses (hawaii-nosema-2013); the old species judged at 0.3. */
  "species-pcr": {
    rates: { nosema_ceranae: 0.99, nosema_apis: 0.97 },
    healthy: { nosema_ceranae: 0.9, nosema_apis: 0.3 },
  },
  /** The highest titre class alone. Judged after classes in healthy and sick Danish colonies (danish-virus-2015). */
  "virus-panel": {
    rates: { chronic_paralysis: 0.95, dwv_overt: 0.95, acute_virus_complex: 0.85 },
    healthy: { chronic_paralysis: 0.03, dwv_overt: 0.15, acute_virus_complex: 0.05 },
  },
  /** Any residue. 0.8 if frozen within a day; without harm judged in every second colony. */
  "residue-screen": { rates: { acute_poisoning: 0.8, chronic_exposure: 0.8 }, healthy: 0.5 },
  /** Cells within a day or two if there is no queen; none with a virgin there. Laying workers start few. */
  "test-frame": { rates: { queenless: 0.9, laying_workers: 0.4 }, healthy: 0.05 },
  /** Depends on the season; other flies are rare in fresh dead bees. */
  "emergence-hold": { rates: { fly_parasitoids: 0.6 }, healthy: 0.005 },
  /** Opened cells beside the mite that was found; varroa goes by its level. */
  "uncap-brood": {
    rates: { tropilaelaps: 0.9, american_foulbrood: 0.8 },
    healthy: { tropilaelaps: 0.002, american_foulbrood: 0.02 },
  },
} as const;

/** Of the residues found: at a dose that harms bees. Judgement. */
export const harmfulDoseRates = { rates: { acute_poisoning: 0.85, chronic_exposure: 0.25 }, healthy: 0.02 } as const;

/**
 * Found by a test that does not count, by level.
 * Genus-level PCR: 41 of 99 Korean colonies held external mites (ahn-2015), so that much is found with no tracheal
 * mite at all; sequenced 1 of 99 where the microscope saw none. Flotation frees external mites too, and finds less
 * below 5 % infested. Varroa in opened cells: in the brood of nearly every colony that carries it. The rest judgement.
 */
export const foundByLevel = {
  "pooled-pcr": { none: 0.41, background: 0.9, clinical: 0.98 },
  "pooled-pcr-sequenced": { none: 0.01, background: 0.9, clinical: 0.98 },
  "tracheal-flotation": { none: 0.1, background: 0.4, clinical: 0.95 },
  "uncap-brood": { none: 0.01, background: 0.7, clinical: 0.98 },
} as const;

/** Bees from honey combs carry about half the mites of bees from the brood nest. Source: calderone-turcotte-1998. */
export const honeyCombMites = 0.5;

/** A colony that died had something: so much of the share with nothing wrong is left for what no cause here names. Judgement. */
export const deadOfNothing = 0.1;

/** A colony dead longer than this has moth, mould and robbing that came after. Judgement. */
export const longDeadDays = 14;

/** More mites on a bee than this is a slip of the pen. Judgement: the most heavily infested samples hold about one. */
export const mostMitesPerBee = 5;

/**
 * A sign that names a cause by itself: `usual` or more of that cause, and of every other cause that could be there half
 * as often at most. What has less than `possible` before anything is looked at could not. Judgement.
 */
export const tellingSign = { least: 0.65, shareElsewhere: 0.5, possible: 0.001 } as const;

/** More bees of one sample that could not be read are a slip of the pen. Judgement: fifty are opened, seldom some hundreds. */
export const mostUnreadable = 1000;

/** More spores in a bee, in millions, are a slip of the pen. Judgement, no source; the most heavily infected hold some hundred. */
export const mostSporesMillions = 500;

/** A result may be dated so many days after the look: the longest time to a result among the tests, that of a residue screen. */
export const lateResultDays = 42;
