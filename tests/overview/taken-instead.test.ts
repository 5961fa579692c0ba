import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import { episodeFigures } from '#lib/figures/episode-figures';
import { takenInstead } from '#lib/overview/taken-instead';

const read = parseEpisodeFile(readFileSync('seed/demo.episode.json', 'utf8'));
if (!read.ok) throw new Error('the demo is no episode');
const demo = read.value;
const skyr = demo.foods.find(({ name }) => name === 'Fjordlea plain skyr');
if (!skyr) throw new Error('the demo has skyr');

test('another label moves its dish by grams times the difference of 100 g, and nothing that was not typed', () => {
  const label = { basis: 'per100g', servingMg: null, values: { protein: '8' } } as const;
  const [taken] = takenInstead([demo], skyr.id, label);
  const [dish] = taken?.dishes ?? [];
  expect(taken?.dishes).toHaveLength(1);
  expect(dish?.numbers.map(({ nutrient }) => nutrient)).toEqual(['protein']);
  const of = episodeFigures(demo).dishes.find(({ segmentId }) => segmentId === dish?.segmentId);
  const line = of?.lines.find(({ foodId }) => foodId === skyr.id);
  const before = of?.whole.protein?.value ?? 0;
  // Worked out by hand: what the dish has without its skyr, and 8 g for each 100 g of it that is eaten.
  const grams = (line?.eatenMg?.value ?? 0) / 1000;
  const after = before - (line?.figures.protein?.value ?? 0) + (grams * 8) / 100;
  expect(Number(dish?.numbers[0]?.after)).toBeCloseTo(after, after < 10 ? 1 : 0);
});

test('targets are held against the numbers with it', () => {
  const none = { basis: 'per100g', servingMg: null, values: { protein: '0' } } as const;
  const targets = takenInstead([demo], skyr.id, none).flatMap((each) => each.targets);
  expect(targets.length).toBeGreaterThan(0);
  for (const { words, told } of targets) {
    expect(words).toContain('protein');
    expect(told).toMatch(/ g, /);
  }
});

test('without a value, with one that is none, or of a food that is not there, nothing is told', () => {
  const empty = { basis: 'per100g', servingMg: null, values: {} } as const;
  expect(takenInstead([demo], skyr.id, empty)).toEqual([]);
  expect(takenInstead([demo], skyr.id, { ...empty, values: { fat: 'some' } })).toEqual([]);
  const serving = { ...empty, basis: 'serving', values: { fat: '1' } } as const;
  expect(takenInstead([demo], skyr.id, serving)).toEqual([]);
  expect(takenInstead([demo], 'nowhere', { ...empty, values: { fat: '1' } })).toEqual([]);
});
