import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import { agreesWithItself } from '#lib/lock/lock-consistency';
import { takeLock } from '#lib/lock/numbers-lock';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

const OATS = aFood('oats', { energyKcal: '379', protein: '13' });
const lock = takeLock(aFile([aDish('d', aRecipe('r', [grams('l', 'oats', 40)]))], [OATS]));

/** The lock with some of its text written otherwise; a text that is not there would change nothing. */
function written(from: string | RegExp, to: string): string {
  const other = lock.snapshot.replace(from, to);
  if (other === lock.snapshot) throw new Error(`the lock has no ${String(from)}`);
  return other;
}

describe('a lock held against itself', () => {
  it('agrees as it was taken, also of an episode with all that there is', () => {
    expect(agreesWithItself(lock.snapshot)).toBe('agrees');
    const demo = parseEpisodeFile(
      readFileSync(new URL('../../seed/demo.episode.json', import.meta.url), 'utf8'),
    );
    if (!demo.ok) throw new Error('the demo must be readable');
    expect(agreesWithItself(takeLock(demo.value).snapshot)).toBe('agrees');
  });

  it.each([
    ['a figure', /"value":151\.6/, '"value":99.6'],
    ['a bound', /"high":[\d.]+,"likelyHigh"/, '"high":null,"likelyHigh"'],
    ['the hash of its inputs', /"inputsSha256":"[0-9a-f]/, '"inputsSha256":"'],
    ['whether the day is whole', '"dayIsWhole":false', '"dayIsWhole":true'],
    ['whose dish it is', '"segmentId":"d","title"', '"segmentId":"e","title"'],
  ])('is unlike itself where %s was changed', (_, from, to) => {
    expect(agreesWithItself(written(from, to))).toBe('unlike');
  });

  it('is unlike itself where its inputs are another amount’s, with a hash that fits them', () => {
    expect(agreesWithItself(otherAmount())).toBe('unlike');
  });

  it('is nobody’s to judge where another engine worked it out, or where it cannot be read', () => {
    const other = written('"engineVersion":"figures-1"', '"engineVersion":"figures-0"');
    expect(agreesWithItself(other)).toBe('otherEngine');
    expect(agreesWithItself('{}')).toBe('otherEngine');
  });
});

/** The inputs of another amount under the figures of this one, with a hash that fits the inputs. */
function otherAmount(): string {
  const file = aFile([aDish('d', aRecipe('r', [grams('l', 'oats', 50)]))], [OATS]);
  const { file: inputs, inputsSha256 } = JSON.parse(takeLock(file).snapshot) as {
    file: unknown;
    inputsSha256: string;
  };
  return JSON.stringify({ ...(JSON.parse(lock.snapshot) as object), file: inputs, inputsSha256 });
}
