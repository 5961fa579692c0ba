import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DESCRIPTION_FORMS, type DescriptionForm } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { heldAgainst } from '#lib/publish/copied-text';
import { descriptionText } from '#lib/publish/description';
import { DEFAULT_LAYOUT } from '#lib/publish/description/layout';
import { DROPPABLE, type Droppable } from '#lib/publish/description/what-to-drop';
import { numbersToPublish } from '#lib/publish/from-lock';
import { step } from '../shoot/made-day';
import { aDish, aFile, aFood, aReading, aRecipe, aTalk, grams } from '../support/build';

const food = aFood('oats', { energyKcal: '100', protein: '10.0', fat: '2.0', carbohydrate: '8.0' });
const dish = (id: string, inFrame: number, g = 400, method = `Stir ${id}.\nBake ${id}.`) =>
  aDish(
    id,
    aRecipe(`r-${id}`, [grams(`${g} g ${id} oats`, 'oats', g), grams('water', 'oats', 0)], {
      portions: [{ id: `p-${id}`, kind: 'count', name: `a quarter of ${id}`, of: 4 }],
      weighings: [aReading(`w-${id}`, 'finished', 360)],
      method,
    }),
    { inFrame, steps: [step(`s-${id}`, { oven: { ovenId: null, milliC: 180_000 } })] },
  );
const aDay = (more: { hook?: string; first?: Parameters<typeof dish> } = {}): EpisodeFile =>
  aFile(
    [
      aTalk('Hello', { inFrame: 0 }),
      dish(...(more.first ?? ['tray', 400])),
      dish('crumb', 900),
      aTalk('Goodbye', { inFrame: 5000 }),
    ],
    [food],
    {
      episode: {
        title: 'Two trays',
        hook: more.hook ?? 'Four breakfasts.',
        webLinks: [{ id: 'w', label: 'Scale', url: 'https://example.org/scale' }],
      },
    },
  );

const writer = (file: EpisodeFile, form: DescriptionForm = 'plain') => {
  const publish = numbersToPublish(file, null);
  const made = new Map<string, string>();
  return (without: readonly Droppable[]) => {
    const key = [...without].sort().join();
    const text =
      made.get(key) ?? descriptionText(publish, { form, without, layout: DEFAULT_LAYOUT });
    made.set(key, text);
    return text;
  };
};

describe('a text that was copied', () => {
  it('reads as it was as long as nothing changed, whatever was left out of it, in every form', () => {
    for (const form of DESCRIPTION_FORMS) {
      const now = writer(aDay(), form);
      fc.assert(
        fc.property(fc.subarray([...DROPPABLE]), (without) => {
          const held = heldAgainst(now(without), now);
          expect(held.since).toEqual([]);
          expect(now(held.without)).toBe(now(without));
        }),
        { numRuns: 40 },
      );
    }
  });

  it('that was made without parts tells what changed in the others, and nothing of them', () => {
    const then = writer(aDay());
    const now = writer(aDay({ first: ['tray', 400, 450] }));
    for (const without of [
      [],
      ['method'],
      ['hook', 'ingredients'],
      ['sources', 'chapters', 'oven'],
    ]) {
      const left = without as Droppable[];
      const { since, without: found } = heldAgainst(then(left), now);
      expect([...found].sort()).toEqual([...left].sort());
      expect(since.filter(({ side }) => side === 'then').map(({ text }) => text)).toContain(
        'The whole dish: 400 kcal · 40 g protein · 8 g fat · 32 g carbohydrate',
      );
      for (const { text } of since) expect(text).not.toMatch(/Stir|Four breakfasts|Sources/);
    }
  });

  it('tells words that were written anew as changed, not as left out', () => {
    const then = writer(aDay());
    const hook = heldAgainst(then([]), writer(aDay({ hook: 'Breakfast until Friday.' })));
    expect(hook).toEqual({
      since: [
        { side: 'then', text: 'Four breakfasts.' },
        { side: 'now', text: 'Breakfast until Friday.' },
      ],
      without: [],
    });
    const anew = writer(aDay({ first: ['tray', 400, 400, 'Rub it.\nBake it dry.'] }));
    const { without, since } = heldAgainst(then([]), anew);
    expect(without).toEqual([]);
    expect(since).toContainEqual({ side: 'now', text: 'Rub it.' });
  });

  it('tells a part that is gone since', () => {
    const { since, without } = heldAgainst(writer(aDay())([]), writer(aDay({ hook: '' })));
    expect(since).toEqual([{ side: 'then', text: 'Four breakfasts.' }]);
    expect(without).toEqual([]);
  });
});
