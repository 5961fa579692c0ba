import { describe, expect, it } from 'vitest';
import { episodeFigures } from '#lib/figures/episode-figures';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { readingScript } from '#lib/overview/reading-script';
import { aDish, aFile, aFood, aLine, aRecipe, aTalk, grams } from '../support/build';

const shot = (id: string) => ({ id, title: id, stepId: null, framing: 'close', lengthS: 5 });
const oats = aFood('oats', { energyKcal: '100', protein: '10.0' });
const file = aFile(
  [
    aTalk('Hook', { talkingPoints: [{ id: 'hi', text: 'Good morning.' }] }),
    aDish('pots', aRecipe('r', [grams('oats', 'oats', 200)]), {
      title: 'Pots',
      shots: [shot('Lid'), shot('Spoon'), shot('Bite')],
      talkingPoints: [
        { id: 'a', text: 'All of it is [energy, whole].' },
        { id: 'b', text: 'Sugars: [sugars, whole], and it is [salty, whole].' },
      ],
    }),
    aDish('soup', aRecipe('s', [aLine('oats to taste', 'oats')]), {
      title: 'Soup',
      talkingPoints: [{ id: 'c', text: '[energy, whole] of it, [nothing] more.' }],
    }),
  ],
  [oats],
);
const figures = episodeFigures(file);
const script = readingScript({ file, figures, numbers: publishedNumbers(file, figures) });

describe('what is read before the camera', () => {
  it('has the sentences in running order with their numbers, and shots as stops', () => {
    expect(script.items.map((item) => `${item.kind} ${item.key} ${item.heading ?? ''}`)).toEqual([
      'point hi Hook',
      'stop Lid Pots',
      'point a ',
      'stop Spoon ',
      'point b ',
      'stop Bite ',
      'point c Soup',
    ]);
    const [, , a] = script.items;
    if (a?.kind !== 'point') throw new Error('a sentence');
    expect(a.parts.map(({ text }) => text).join('')).toBe('All of it is 200 kcal.');
    // "All of it is", "two hundred", "kcal".
    expect(a.words).toBe(7);
    expect(a.parts.every(({ open }) => !open)).toBe(true);
  });

  it('shows open numbers as open, tells why, and says "at least" where it is', () => {
    const [, , , , b, , c] = script.items;
    if (b?.kind !== 'point' || c?.kind !== 'point') throw new Error('sentences');
    const open = [...b.parts, ...c.parts].filter((part) => part.open).map(({ text }) => text);
    expect(open).toEqual(['[salty, whole]', '[calories is open]', '[nothing]']);
    expect(b.parts.map(({ text }) => text).join('')).toContain('Sugars: at least 0 g');
    expect(script.gaps.map(({ segmentId, of }) => [segmentId, of?.nutrient ?? null])).toEqual([
      ['pots', null],
      ['soup', 'energyKcal'],
      ['soup', null],
    ]);
    expect(script.gaps[1]?.words).toContain('no grams for oats to taste');
  });
});
