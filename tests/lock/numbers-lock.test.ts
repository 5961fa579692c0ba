import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { lockHolds, takeLock } from '#lib/lock/numbers-lock';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

const file = aFile(
  [aDish('d', aRecipe('r', [grams('l', 'oats', 40)]))],
  [aFood('oats', { energyKcal: '379' })],
);

function changed(change: (copy: typeof file) => void): typeof file {
  const copy = structuredClone(file);
  change(copy);
  return copy;
}

describe('the numbers lock', () => {
  it('is the hash of its snapshot, and the same for the same input', () => {
    const lock = takeLock(file);
    expect(lock.sha256).toBe(createHash('sha256').update(lock.snapshot).digest('hex'));
    expect(takeLock(structuredClone(file))).toEqual(lock);
  });

  // RFC 8785, section 3.2.3: members in order of UTF-16 code units, no white space.
  it('stores canonical JSON that holds the whole file', () => {
    const { snapshot } = takeLock(file);
    expect(snapshot.startsWith('{"engineVersion":')).toBe(true);
    expect(JSON.parse(snapshot).file).toEqual(JSON.parse(JSON.stringify(file)));
    expect(snapshot).not.toMatch(/[{,]\s/);
  });

  it('holds where a label was read again and says the same, and not where it says something else', () => {
    const lock = takeLock(file);
    const again = (energyKcal: string) =>
      changed(({ foods }) => {
        const [food] = foods;
        if (!food) throw new Error('no food');
        const { version } = aFood('oats', { energyKcal });
        food.version = { ...version, id: 'read-again', seq: 2, dateRead: '2027-01-02' };
      });
    expect(lockHolds(lock, again('379'))).toBe(true);
    expect(lockHolds(lock, again('380'))).toBe(false);
  });

  it('holds where it was taken when the id and date of a reading still counted', () => {
    const engineVersion = takeLock(file).engineVersion;
    // Of this very file, by the code before: a change of `tests/support/build` changes it too.
    const inputsSha256 = '69c934a94e486e5838fbd8fbd6379d7b395a76301fdf430655979b91441c515d';
    expect(lockHolds({ engineVersion, inputsSha256 }, file)).toBe(true);
    const other = changed(({ foods }) => foods.splice(0, 1, aFood('oats', { energyKcal: '380' })));
    expect(lockHolds({ engineVersion, inputsSha256 }, other)).toBe(false);
  });

  it.each([
    [
      'grams',
      (f: typeof file) => f.episode.segments[0]?.recipe?.lines.splice(0, 1, grams('l', 'oats', 41)),
    ],
    ['the food', (f: typeof file) => f.foods.splice(0, 1, aFood('oats', { energyKcal: '380' }))],
    [
      'the digits of the food',
      (f: typeof file) => f.foods.splice(0, 1, aFood('oats', { energyKcal: '379.0' })),
    ],
    [
      'the eaten share',
      (f: typeof file) => Object.assign(f.episode.segments[0] ?? {}, { eaten: { num: 1, den: 2 } }),
    ],
    ['the region', (f: typeof file) => Object.assign(f.episode, { region: 'EU' })],
    [
      'the scale',
      (f: typeof file) => Object.assign(f.kitchen.scales[0] ?? {}, { resolutionMg: 100 }),
    ],
  ])('is broken by a change of %s', (_, change) => {
    const lock = takeLock(file);
    expect(
      lockHolds(
        lock,
        changed((copy) => void change(copy)),
      ),
    ).toBe(false);
  });

  it('is the same whatever captions say, and keeps none of their words', () => {
    const captioned = (text: string) =>
      changed((copy) => {
        const texts = [{ id: 't', kind: 'captions' as const, name: 'cut 1', text }];
        copy.edit = { texts, mends: [], named: [{ id: 'n', food: 'butter', answer: 'none' }] };
      });
    const lock = takeLock(captioned('About 150 calories of oats.'));
    expect(lock).toEqual(takeLock(file));
    expect(takeLock(captioned('Nine hundred calories.'))).toEqual(lock);
    expect(lock.snapshot).not.toContain('butter');
    expect(lockHolds(lock, captioned('Nine hundred calories.'))).toBe(true);
  });

  it('holds through changes that touch no number', () => {
    const lock = takeLock(file);
    const other = changed((copy) => {
      Object.assign(copy.episode, { title: 'Another title', publishOn: '2026-04-01' });
      Object.assign(copy.episode, { dropFrame: true });
      Object.assign(copy.episode.segments[0] ?? {}, { chapter: false });
      Object.assign(copy, { savedAt: '2027-01-01T00:00:00.000Z' });
    });
    const reworded = changed((copy) => {
      Object.assign(copy.episode.segments[0]?.recipe?.lines[0] ?? {}, {
        note: 'well stirred',
        text: 'oats',
        spoiltByTake: true,
      });
      Object.assign(copy.episode.segments[0] ?? {}, { eaten: { num: 2, den: 2 } });
    });
    expect(lockHolds(lock, reworded)).toBe(true);
    expect(lockHolds(lock, other)).toBe(true);
    expect(takeLock(other).sha256).not.toBe(lock.sha256);
  });

  it('holds where the same amount is written in lower terms', () => {
    const written = (num: number, den: number) => {
      const amount = { num, den };
      const line = aLine('l', 'oats', { quantity: { low: amount, high: amount }, unit: 'oz' });
      return aFile([aDish('d', aRecipe('r', [line]))], file.foods);
    };
    expect(lockHolds(takeLock(written(6, 10)), written(3, 5))).toBe(true);
    expect(lockHolds(takeLock(written(6, 10)), written(3, 4))).toBe(false);
  });

  it('is broken by another engine', () => {
    expect(lockHolds({ ...takeLock(file), engineVersion: 'figures-0' }, file)).toBe(false);
  });
});
