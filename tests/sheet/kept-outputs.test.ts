import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { takeLock } from '#lib/lock/numbers-lock';
import { outputs, type KeptNumbers } from '#lib/sheet/outputs';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

/** Macros that come to the calories of 100 g by 4-4-9. */
const BEAN = aFood(
  'bean',
  { energyKcal: '101', protein: '10.0', fat: '1.0', carbohydrate: '13.0' },
  { name: 'Harbour beans', kind: 'label' },
);
const stew = (amount: number): EpisodeFile => {
  const line = grams('beans', 'bean', amount, { text: 'beans' });
  const file = aFile([aDish('s', aRecipe('r', [line]), { title: 'Stew' })], [BEAN]);
  const piece = { id: 'p', kind: 'text' as const, title: 'Short', segmentIds: ['s'], limit: 500 };
  return { ...file, publish: { variants: [], replies: [], pieces: [piece] } };
};
const clock = { now: '2026-11-30T12:00:00.000Z', seed: 1 };
const { inputsSha256, ...taken } = takeLock(stew(400));
const lock = { ...taken, seq: 2, at: '2026-11-29T12:00:00.000Z' };
const FOOT = 'Correction, 29 Nov 2026: Stew, the whole dish: 404 kcal (not 303).';
const made = (kept: KeptNumbers) => outputs(stew(500), clock, kept);

// 400 g at 101 kcal per 100 g are 404 kcal, 500 g are 505.
describe('outputs of an episode whose numbers are kept', () => {
  const files = made({ lock, corrections: [FOOT] });

  it.each(['description.txt', 'description.md', 'description.html', 'pieces.txt'])(
    '%s has the numbers of the lock, though it is broken',
    (name) => {
      expect(files.get(name)).toContain('404 kcal');
      expect(files.get(name)).not.toContain('505 kcal');
    },
  );

  it('have the corrections in the description', () => {
    expect(files.get('description.txt')).toContain(FOOT);
    const draft = made({ lock: null, corrections: [] });
    expect(draft.get('description.txt')).toContain('505 kcal');
    expect(draft.get('description.txt')).not.toContain('Correction,');
  });

  it('name the lock that the figures are of, and whether it holds', () => {
    const figures = JSON.parse(files.get('figures.json') ?? '') as {
      lock: unknown;
      dishes: { whole: { energyKcal: { published: string } } }[];
    };
    expect(figures.lock).toEqual({
      ...{ seq: 2, at: lock.at, sha256: lock.sha256, inputsSha256, holds: false },
      ...{ schemaVersion: lock.schemaVersion, engineVersion: lock.engineVersion },
    });
    expect(figures.dishes[0]?.whole.energyKcal.published).toBe('404');
  });

  it('buy what is cooked now, and leave the evidence to where the day is known', () => {
    expect(files.get('shopping.txt')).toContain('500 g');
    expect(files.has('evidence.json')).toBe(false);
    expect(outputs(stew(500), clock).has('evidence.json')).toBe(true);
  });
});
