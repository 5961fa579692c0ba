import { describe, expect, test } from 'vitest';
import { readStatements } from '#lib/claims/read-statements';
import { brief } from './brief';

// Invented sentences; how captions are set is common practice, no source.
const SAID =
  'so calories for the bowl four hundred and thirty, protein thirty one grams, and it is 180 for forty minutes';

const READ = [
  'nutrient 430 energyKcal kcal portion',
  'nutrient 31 protein g portion',
  'ovenTemperature 180 C',
  'minutes 40 min',
];

test('the text without any noise', () => expect(brief(SAID)).toEqual(READ));

describe('what captions hold beside the words changes nothing', () => {
  const words = SAID.split(' ');
  const put = (at: number, sound: string) =>
    [...words.slice(0, at), sound, ...words.slice(at)].join(' ');

  test.each(words.map((_, at) => at).slice(1))('a sound before word %i', (at) => {
    expect(brief(put(at, 'um'))).toEqual(READ);
  });

  test.each(words.map((_, at) => at).slice(1))('the end of a line before word %i', (at) => {
    expect(brief(`${words.slice(0, at).join(' ')}\n${words.slice(at).join(' ')}`)).toEqual(READ);
  });

  test.each([
    ['who speaks', `>> ${SAID}`],
    ['notes of sounds', `[Music] ${SAID} [Applause]`],
    ['a song', `♪ ♪ ${SAID}`],
    ['capitals', SAID.toUpperCase()],
  ])('%s', (_, text) => expect(brief(text)).toEqual(READ));
});

test('digits at the start of a line are a number, and have their place', () => {
  const text = 'it has got\n31 grams of protein';
  const [said] = readStatements(text, { form: 'captions' });
  expect(said).toMatchObject({ low: 31, start: text.indexOf('31'), words: '31 grams of protein' });
});

test('a sound that takes back is no mere sound, and brackets with a number stay', () => {
  expect(brief('it is four ten calories, uh no, four twenty')).toEqual([
    'nutrient 420 energyKcal kcal',
  ]);
  expect(brief('it is [410 calories] a bowl')).toEqual(['nutrient 410 energyKcal kcal portion']);
});

describe('numbers that nobody counts or eats', () => {
  test.each([
    ['tuna ninety cheese about thirty, so that is a melt', []],
    ['fat is the low one fourteen and that brings you to five oh six', []],
    [
      'two hundred yogurt thirty granola eighty berries',
      ['amount 200 g yogurt', 'amount 30 g granola', 'amount 80 g berry'],
    ],
    ['the calories are a hundred and forty of the four twenty for the dressing', []],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});
