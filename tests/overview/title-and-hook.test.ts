import { describe, expect, test } from 'vitest';
import { NO_FACTS } from '#lib/claims/edit-facts';
import { promiseRows } from '#lib/overview/title-and-hook';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

/** Two invented dishes, eaten whole: 1,300 g at 110 kcal and 9.0 g of protein are 1,430 kcal and 117 g. */
const mash = aFood(
  'mash',
  { energyKcal: '110', protein: '9.0', fat: '4.0', carbohydrate: '9.5' },
  { name: 'Lentil mash' },
);
const dish = (id: string, title: string, g: number) =>
  aDish(id, aRecipe(`r-${id}`, [grams(`l-${id}`, 'mash', g)]), { title });
const episode = (title: string, hook: string) =>
  aFile([dish('a', 'Lentil bowl', 700), dish('b', 'Red soup', 600)], [mash], {
    episode: { title, hook, region: 'US', anythingElse: { kind: 'nothing' } },
  });
const rows = (title: string, hook: string) =>
  promiseRows(episode(title, hook), NO_FACTS).map(({ in: place, words, standing, sayInstead }) => [
    place,
    words,
    standing,
    sayInstead,
  ]);

// Verdicts are those of MODEL D; that a title is one more text of the episode is the project's own rule.
describe('what title and hook promise', () => {
  test('is told where the numbers deny it, each with the right words', () => {
    expect(
      rows('130g protein in a day', '130 grams of protein in a whole day, under 1400 cals'),
    ).toEqual([
      ['title', '130g protein', 'off', '117 grams of protein'],
      ['hook', '130 grams of protein', 'off', '117 grams of protein'],
      ['hook', 'under 1400 cals', 'off', expect.stringMatching(/^under 1,4[34]\d calories$/)],
    ]);
  });

  test('is not told where it agrees, and nothing is told of words without a number', () => {
    expect(rows('117g protein in a day', 'Under 1,500 calories for the whole day.')).toEqual([]);
    expect(rows('Two pots and a spoon', '')).toEqual([]);
  });

  test('is told with what is missing where nobody can say', () => {
    const [row] = promiseRows(episode('A full day of high protein', ''), NO_FACTS);
    expect(row).toMatchObject({ in: 'title', standing: 'unknown', sayInstead: null });
    expect(row?.why).toContain('can’t say');
  });

  test('is not mixed up with what is planned to be said', () => {
    const file = episode('117g protein in a day', '');
    const [first, ...others] = file.episode.segments;
    const point = { id: 'tp', text: 'It has 900 calories.', bindings: [] };
    const spoken = first ? [{ ...first, talkingPoints: [point] }, ...others] : [];
    const planned = { ...file, episode: { ...file.episode, segments: spoken } };
    expect(promiseRows(planned as typeof file, NO_FACTS)).toEqual([]);
  });
});
