import { z } from 'zod';
import type { EpisodeFile } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import { printFigure } from '#lib/figures/print-figure';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { ENGINE_VERSION, lockHolds } from '#lib/lock/numbers-lock';
import { localDate } from '#lib/units/local-date';
import { printDayOfMonth } from '#lib/units/print-date';

/** Where an episode's numbers stand: never locked, locked, or locked and then changed underneath. */
export type LockStanding = 'draft' | 'locked' | 'broken';

export const STANDING_WORDS: Readonly<Record<LockStanding, string>> = {
  draft: 'draft',
  locked: 'locked',
  broken: 'lock broken',
};

const frozen = z.object({ inputsSha256: z.string(), engineVersion: z.string() });

/**
 * Holds the last lock's snapshot against the episode as it is now.
 * @param snapshot canonical JSON as `takeLock` made it, or null where none was taken
 * @example lockStanding(takeLock(file).snapshot, file) // 'locked'
 */
export function lockStanding(snapshot: string | null, file: EpisodeFile): LockStanding {
  if (snapshot === null) return 'draft';
  const lock = frozen.safeParse(dataOf(snapshot));
  return lock.success && lockHolds(lock.data, file) ? 'locked' : 'broken';
}

/** What a lock says of itself where it is no JSON, or not of a form that is known. */
export const UNREADABLE_LOCK = 'the lock itself cannot be read by this version of the program';

function dataOf(snapshot: string): unknown {
  try {
    return JSON.parse(snapshot);
  } catch {
    return null;
  }
}

const kept = frozen.extend({
  figures: z.object({
    dishes: z.array(
      z.object({
        segmentId: z.string(),
        title: z.string(),
        whole: z.record(
          z.string(),
          z.object({
            value: z.number(),
            low: z.number().nullable(),
            high: z.number().nullable(),
          }),
        ),
      }),
    ),
  }),
  file: z.object({
    episode: z.object({ energyStep: z.number().default(1) }),
    said: z.array(z.object({ id: z.string() })).default([]),
  }),
});

/** What a change under a lock is told by: energy and protein of each dish, whole. */
const TOLD = ['energyKcal', 'protein'] as const;

/**
 * Why a kept lock does not hold any more, in words; null while it holds. Names the dishes whose energy or
 * protein came out otherwise, with the old number and the new.
 * @param snapshot canonical JSON as `takeLock` made it
 * @param figures the figures as they are now
 * @example whyBroken(takeLock(file).snapshot, file, episodeFigures(file)) // null
 */
export function whyBroken(
  snapshot: string,
  file: EpisodeFile,
  figures: EpisodeFigures,
): string | null {
  const read = kept.safeParse(dataOf(snapshot));
  if (!read.success) return UNREADABLE_LOCK;
  const lock = read.data;
  if (lockHolds(lock, file)) return null;
  if (lock.engineVersion !== ENGINE_VERSION) {
    return 'the calculation itself has changed with a newer version of the program';
  }
  const changes = figures.dishes.flatMap((dish) => {
    const before = lock.figures.dishes.find(({ segmentId }) => segmentId === dish.segmentId);
    if (!before) return [`${dish.title} is new`];
    const told = TOLD.flatMap((nutrient) => {
      const now = dish.whole[nutrient];
      const then = before.whole[nutrient];
      if (!now || !then) return [];
      const { unit } = NUTRIENTS[nutrient];
      const [from, to] = [printFigure({ ...now, ...then }, 1).text, printFigure(now, 1).text];
      return from === to ? [] : [`${from} → ${to} ${unit}`];
    });
    return told.length > 0 ? [`${dish.title} ${told.join(', ')}`] : [];
  });
  const gone = lock.figures.dishes.filter(
    ({ segmentId }) => !figures.dishes.some((dish) => dish.segmentId === segmentId),
  );
  const { energyStep } = file.episode;
  const step =
    energyStep === lock.file.episode.energyStep
      ? []
      : [`calories are written to ${energyStep} kcal now`];
  const words = [
    ...changes,
    ...gone.map(({ title }) => `${title} is gone`),
    ...step,
    ...saidSince(lock.file.said, file),
  ];
  return words.length > 0
    ? words.join('; ')
    : 'an ingredient, food, portion or answer under it has changed, and no dish by a whole number';
}

/** Lines said in front of the camera since a lock, or not said after all: they fix other numbers. */
function saidSince(before: readonly { readonly id: string }[], file: EpisodeFile): string[] {
  const { zone } = file.kitchen;
  const fresh = file.said.filter(({ id }) => !before.some((line) => line.id === id));
  const gone = before.filter(({ id }) => !file.said.some((line) => line.id === id));
  return [
    ...fresh.map(({ at, text }) => {
      return `on ${printDayOfMonth(localDate(new Date(at), zone))} you said “${text}”`;
    }),
    ...(gone.length > 0 && fresh.length === 0 ? ['a line that was said no longer counts'] : []),
  ];
}
