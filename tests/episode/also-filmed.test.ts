import { describe, expect, it } from 'vitest';
import { episodeFileText, parseEpisodeData, parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { UNSAID_DAY, UNSAID_DAY_SEGMENT } from '#lib/episode/unsaid';
import { randomDay } from '../shoot/random-day';
import { asTwo } from '../shoot/several-episodes';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

const two = (): EpisodeFile => structuredClone(asTwo(randomDay(3)));

const on = (segmentId: string) => ({ ...UNSAID_DAY_SEGMENT, id: `on-${segmentId}`, segmentId });
const filmed = {
  ...UNSAID_DAY,
  ...{ id: 'day', date: '2026-06-06', kind: 'packed' as const, startMin: 540, wrapByMin: null },
  ...{ mealGapMin: 0, appointments: [], pins: [] },
};

/** The faults of a file with one place changed, as a person's slip would. */
function faults(change: (file: EpisodeFile, other: NonNullable<EpisodeFile['also']>[0]) => void) {
  const file = two();
  const [other] = file.also ?? [];
  if (other === undefined) throw new Error('The day has one episode alone');
  change(file, other);
  const read = parseEpisodeData(file);
  return read.ok ? [] : read.problems.map(({ path, message }) => `${path}: ${message}`);
}

describe('other episodes of a file’s day', () => {
  it('are read back as they were written, and stand in no file without them', () => {
    expect(parseEpisodeFile(episodeFileText(two()))).toEqual({ ok: true, value: two() });
    expect(episodeFileText(randomDay(3))).not.toContain('"also"');
  });

  it('cannot be the same twice, nor the file’s own', () => {
    expect(faults((file, other) => file.also?.push(structuredClone(other)))).toContain(
      'also[1].id: the episode "A second episode" is on this day already',
    );
    expect(faults((file, other) => Object.assign(other, { id: file.episode.id }))).toEqual([
      'also[0].id: the episode "A second episode" is on this day already',
    ]);
  });

  it('need a day', () => {
    expect(faults((file) => Object.assign(file, { day: null }))).toEqual([
      'also: there is no filming day that these episodes could be filmed on',
    ]);
  });

  it('have only segments that the day films, and the day only segments that one of them has', () => {
    const unknown = faults((file, other) => {
      for (const place of file.day?.segments ?? []) {
        if (place.segmentId === other.segments[0]?.id) place.segmentId = 'removed';
      }
    });
    expect(unknown).toEqual([
      expect.stringMatching(/^day\.segments\[\d\]\.segmentId: no segment has the id "removed"$/),
      expect.stringMatching(/^also\[0\]\.segments\[0\]: ".+" is not filmed on this day: leave/),
    ]);
  });

  it('have ids that nothing else of the file has', () => {
    const same = faults((file, other) => {
      const [theirs] = other.segments[0]?.steps ?? [];
      const [own] = file.episode.segments[0]?.steps ?? [];
      if (theirs && own) theirs.id = own.id;
    });
    expect(same.join('\n')).toMatch(/^also: the id "[\w-]+" is given twice$/m);
  });

  it('name ovens and foods that are there, else the fault is told at its place', () => {
    const lost = faults((_, other) => {
      const [step] = other.segments[0]?.steps ?? [];
      if (step) step.oven = { ovenId: 'nowhere', milliC: 180_000 };
      other.stock.push({
        ...{ id: 'lot', foodId: 'none', place: '', openedOn: null, useBy: null },
        moves: [],
      });
    });
    expect(lost).toEqual([
      'also[0].segments[0].steps[0].oven.ovenId: no oven has the id "nowhere"',
      'also[0].stock[0].foodId: no food has the id "none"',
    ]);
  });

  it('lend the file’s own dishes nothing: a food that only they bring is not known to it', () => {
    const dish = (id: string, food: string) =>
      aDish(id, aRecipe(`${id}-recipe`, [grams(`${id}-line`, food, 40)]));
    const day = { ...filmed, segments: [on('own'), on('theirs')] };
    const file = (food: string): EpisodeFile => ({
      ...aFile([dish('own', food)], [aFood('oats', { energyKcal: '379' })]),
      day,
      also: [
        {
          ...{ id: 'other', title: 'Quick suppers', region: 'EU', links: [], recipes: [] },
          segments: [dish('theirs', 'lentils'), { ...dish('more', 'oats'), id: 'theirs-too' }],
          foods: [aFood('lentils', { energyKcal: '352' })],
          stock: [],
          packs: [],
        },
      ],
    });
    const faultsOf = (food: string): string[] => {
      const read = parseEpisodeData(file(food));
      return read.ok ? [] : read.problems.map(({ path, code }) => `${path}: ${code}`);
    };
    day.segments.push(on('theirs-too'));
    expect(faultsOf('oats')).toEqual([]);
    expect(faultsOf('lentils')).toEqual(['episode.segments[0].recipe.lines[0].foodId: unknown-id']);
  });
});
