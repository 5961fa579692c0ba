import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { outputs } from '#lib/sheet/outputs';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

const OATS = aFood('oats', { energyKcal: '379', protein: '13.0' });
const clock = { now: '2026-03-07T18:00:00.000Z', seed: 1 };
const mass = (g: number) => ({ lowMg: g * 1000, valueMg: g * 1000, highMg: g * 1000 });

/** Open by a missing amount, by a missing finished weight, and by both at once. */
const FILES: readonly [string, EpisodeFile][] = [
  [
    'an ingredient without grams',
    aFile(
      [aDish('d', aRecipe('r', [aLine('some oats', 'oats'), grams('oats', 'oats', 50)]))],
      [OATS],
    ),
  ],
  [
    'a portion and a part eaten by grams of a dish that was not weighed',
    aFile(
      [
        aDish(
          'd',
          aRecipe('r', [grams('oats', 'oats', 50)], {
            portions: [{ id: 'p', kind: 'mass', name: 'a bowl', massMg: 100_000 }],
          }),
          { ate: { kind: 'mass', ...mass(90) } },
        ),
      ],
      [OATS],
    ),
  ],
  [
    'grams of a dish within it that was not weighed',
    aFile(
      [
        aDish(
          'd',
          aRecipe(
            'r',
            [aLine('porridge', null, { madeFrom: { recipeId: 'in', rev: 1 }, planned: mass(90) })],
            {
              weighings: [aReading('w', 'finished', 200)],
            },
          ),
        ),
      ],
      [OATS],
      { recipes: [aRecipe('in', [grams('oats', 'oats', 50)])] },
    ),
  ],
];

interface Said {
  readonly value: unknown;
  readonly low: number | null;
  readonly high: number | null;
  readonly shown?: string;
  readonly published?: string;
}

/** Everything in a file of figures that has bounds. */
function figuresIn(data: unknown): Said[] {
  if (typeof data !== 'object' || data === null) return [];
  const own = 'likelyLow' in data && 'nutrient' in data ? [data as unknown as Said] : [];
  return [...own, ...Object.values(data).flatMap(figuresIn)];
}

describe('an open figure', () => {
  it.each(FILES)('has no number in the file of figures: %s', (_, file) => {
    const text = outputs(file, clock).get('figures.json') ?? '';
    const open = figuresIn(JSON.parse(text)).filter(
      ({ low, high }) => low === null && high === null,
    );
    expect(open.length).toBeGreaterThan(2);
    for (const { value, shown = 'open', published = 'open' } of open) {
      expect([value, shown, published]).toEqual([null, 'open', 'open']);
    }
  });

  it('has none per 100 g where nothing says what the finished dish weighs', () => {
    const [, [, file]] = FILES as unknown as [unknown, [string, EpisodeFile]];
    const data = JSON.parse(outputs(file, clock).get('figures.json') ?? '') as {
      dishes: { per100g: unknown; finishedMg: unknown }[];
    };
    expect(data.dishes[0]).toMatchObject({ per100g: null, finishedMg: null });
  });
});
