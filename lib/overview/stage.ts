/** Where an episode stands; derived from facts, never typed. */
export type Stage =
  'sketch' | 'numbersOpen' | 'numbersReady' | 'filmingSet' | 'inTheEdit' | 'published';

/** The facts a stage is derived from. */
export interface StageFacts {
  readonly dishes: number;
  readonly lines: number;
  /** Ingredients that have no food or no amount yet. */
  readonly openLines: number;
  readonly segments: number;
  /** Segments that have a time in the cut. */
  readonly timedSegments: number;
  /** The filming date, `YYYY-MM-DD`, or null. */
  readonly filmingDate: string | null;
  /** Whether a description was copied: its numbers are locked, but nothing is out by that alone. */
  readonly copied: boolean;
  /** The publishing date, `YYYY-MM-DD`, or null. */
  readonly publishOn: string | null;
}

export const STAGE_WORDS: Readonly<Record<Stage, string>> = {
  sketch: 'sketch',
  numbersOpen: 'numbers open',
  numbersReady: 'numbers ready',
  filmingSet: 'filming set',
  inTheEdit: 'in the edit',
  published: 'published',
};

/**
 * The stage of an episode on a date. It is published once its description was copied and its date has come,
 * whatever is open; a filming day ahead wins over times in the cut that were typed early.
 * @param today local date, `YYYY-MM-DD`
 * @example stageOf({ dishes: 0, … }, '2026-12-01') // 'sketch'
 */
export function stageOf(facts: StageFacts, today: string): Stage {
  if (facts.copied && facts.publishOn !== null && facts.publishOn <= today) return 'published';
  if (facts.dishes === 0 || facts.lines === 0) return 'sketch';
  if (facts.filmingDate !== null && facts.filmingDate >= today) return 'filmingSet';
  const cut = facts.timedSegments > 0 && facts.timedSegments === facts.segments;
  if (facts.filmingDate !== null || cut) return 'inTheEdit';
  return facts.openLines > 0 ? 'numbersOpen' : 'numbersReady';
}
