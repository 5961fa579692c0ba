import { describe, expect, test } from 'vitest';
import type { Judged } from '#lib/claims/judged';
import { sentenceAround } from '#lib/claims/sentence-around';
import { waysToMend } from '#lib/claims/ways-to-mend';
import { heardAround } from '#lib/cut/heard-around';

const TEXT = 'Out of the oven. The whole tray\nis 640 calories, 2.5 g of salt. Now we eat.';
const start = TEXT.indexOf('640');
const off: Judged = {
  id: 't1.0',
  place: {
    textId: 't1',
    kind: 'captions',
    line: 3,
    startMs: 60_000,
    endMs: 62_000,
    segmentId: null,
  },
  statement: {
    kind: 'nutrient',
    nutrient: 'energyKcal',
    unit: 'kcal',
    low: 640,
    high: 640,
    hedge: 'none',
    scope: 'whole',
    start,
    end: start + '640 calories'.length,
    words: '640 calories',
    tags: [],
    how: [],
  },
  mendId: null,
  verdict: 'off',
  why: '602 calories, 590 to 614',
  difference: '38 calories more than your breakdown',
  sayInstead: 'about 600 calories',
  remark: null,
  against: null,
  misheard: [],
};

describe('the sentence around a place', () => {
  test('begins and ends at stops, not at the point of a number or the end of a line', () => {
    expect(sentenceAround(TEXT, start, start + 3).words).toBe(
      'The whole tray is 640 calories, 2.5 g of salt.',
    );
  });

  test('is cut at words where captions have no stops', () => {
    const long = `${'word '.repeat(400)}640 calories ${'word '.repeat(400)}`;
    const at = long.indexOf('640');
    const { words } = sentenceAround(long, at, at + 12);
    expect(words.length).toBeLessThan(300);
    expect(words).toMatch(/^word .*640 calories .*word$/);
  });
});

describe('ways to mend', () => {
  // BBC Subtitle Guidelines, 160 to 180 words a minute: 12 words at 160 stand 4.5 seconds.
  test('a card stands from the words on until it can be read at 160 words a minute', () => {
    const { card } = waysToMend(off, TEXT, 150);
    expect(card?.words).toBe('Correction: about 600 calories, not “640 calories”');
    // Correction about six hundred calories not six hundred and forty calories: 11 words.
    expect(card).toMatchObject({ startMs: 60_000, endMs: 64_200 });
  });

  test('the sentence says the right words in the place of the wrong ones, and how long it takes', () => {
    const { sentence } = waysToMend(off, TEXT, 150);
    expect(sentence?.words).toBe('The whole tray is about 600 calories, 2.5 g of salt.');
    expect(sentence?.was).toContain('640');
    // National Center for Voice and Speech: 150 words a minute, so 2.5 a second.
    const spoken = 'the whole tray is about six hundred calories two point five g of salt';
    expect(sentence?.seconds).toBeCloseTo(spoken.split(' ').length / 2.5, 1);
  });

  test('nothing is mended that agrees, no card where nothing better can be said or there is no time', () => {
    const none = { card: null, cut: null, sentence: null };
    expect(waysToMend({ ...off, verdict: 'agrees' }, TEXT, 150)).toEqual(none);
    const silent = waysToMend({ ...off, sayInstead: null }, TEXT, 150);
    expect(silent).toEqual({ ...none, cut: { startMs: 60_000, endMs: 62_000 } });
    const written = { ...off, place: { ...off.place, startMs: null, endMs: null } };
    expect(waysToMend(written, TEXT, 150)).toMatchObject({ card: null, cut: null });
  });
});

test.each([
  [190_000, 192_000, 188.5, 193.5],
  [1000, 2000, 0, 5],
  [10_000, 20_000, 10, 20],
])('around %i to %i ms five seconds are heard, and all of the words', (from, to, fromS, toS) => {
  expect(heardAround(from, to)).toEqual({ fromS, toS });
});

describe('the sentence to say again where portions are off', () => {
  const mended = (text: string, words: string, low: number, sayInstead: string) => {
    const at = text.indexOf(words);
    const place = { start: at, end: at + words.length, words };
    const said = { ...off.statement, ...place };
    const statement: Judged['statement'] = {
      ...{ kind: 'portions', unit: 'portion', low, high: low, hedge: 'none' },
      ...{ start: said.start, end: said.end, words, tags: [], how: [] },
    };
    return waysToMend({ ...off, statement, sayInstead }, text, 150).sentence?.words;
  };

  test.each([
    [
      'This makes four portions, so you get a quarter of the pan.',
      'four portions',
      4,
      '5 portions',
      'This makes 5 portions, so you get a fifth of the pan.',
    ],
    [
      'It serves three, a third each.',
      'three',
      3,
      '8 portions',
      'It serves 8 portions, an eighth each.',
    ],
    // A share that follows from another number stays.
    [
      'It makes four portions with a third of the rice.',
      'four portions',
      4,
      '5 portions',
      'It makes 5 portions with a third of the rice.',
    ],
    // Nor does a share of something else.
    [
      'It makes four portions with a quarter cup of oil.',
      'four portions',
      4,
      '5 portions',
      'It makes 5 portions with a quarter cup of oil.',
    ],
    [
      'Serves two, and takes one half hour.',
      'two',
      2,
      '3 portions',
      'Serves 3 portions, and takes one half hour.',
    ],
    [
      'A quarter each, so four portions.',
      'four portions',
      4,
      '5 portions',
      'A fifth each, so 5 portions.',
    ],
  ])('%s', (text, words, low, sayInstead, sentence) => {
    expect(mended(text, words, low, sayInstead)).toBe(sentence);
  });
});
