import { describe, expect, it } from 'vitest';
import type { Weighing } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { proposedFit, wishOf } from '#lib/swap/fit-wish';
import { fitRows } from '#lib/swap/fit-form-rows';
import { recipeAtFit } from '#lib/swap/recipe-at-fit';
import { fitSteps, tellFit } from '#lib/swap/recipe-fit';
import { aLine, aReading, grams } from '../support/build';
import { kitchen } from './kitchen';

const one = { num: 1, den: 1 };
const lines = [
  grams('curd', 'lean', 200, { text: '200 g curd' }),
  grams('oats', 'oats', 80),
  aLine('salt', null),
];
function bowl(weighings: Weighing[] = []): EpisodeFile {
  const file = kitchen(lines);
  file.episode.segments[0]?.recipe?.weighings.splice(0, 1, ...weighings);
  file.episode.targets = [
    {
      id: 't',
      nutrient: 'protein',
      relation: 'atLeast',
      amount: 13,
      segmentId: 'bowl',
      portionId: 'third',
    },
  ];
  return file;
}
const more = [{ kind: 'amount', lineId: 'curd', massMg: 295_000 }] as const;
const reading = (id: string, kind: Weighing['kind'], ...ids: string[]) =>
  aReading(id, kind, 203, { shares: ids.map((lineId) => ({ lineId, share: one })) });

describe('fitted amounts put into a recipe', () => {
  it('change amounts and words of the ingredients alone that they name', () => {
    const put = recipeAtFit(bowl(), 'bowl', more);
    expect(put).toMatchObject({
      ok: true,
      value: {
        readings: [],
        lines: [{ id: 'curd', text: '295 g curd', planned: { valueMg: 295_000 } }],
      },
    });
  });

  it('take along what was weighed of other amounts, and nothing else', () => {
    const file = bowl([
      reading('w1', 'raw', 'curd'),
      reading('w2', 'raw', 'oats'),
      reading('w3', 'finished'),
    ]);
    const put = recipeAtFit(file, 'bowl', more);
    expect(put.ok && put.value.readings).toEqual(['w1', 'w3']);
  });

  it('say so where a reading is of an ingredient that stays as well', () => {
    const put = recipeAtFit(bowl([reading('w1', 'raw', 'curd', 'oats')]), 'bowl', more);
    expect(put.ok ? '' : put.problems[0]?.message).toContain('200 g curd and oats together');
  });
});

describe('what is asked of a fit', () => {
  it('is the targets of the episode in practical steps, and says what cannot change', async () => {
    const asked = proposedFit(bowl(), 'bowl');
    expect(asked.targets).toEqual(['t']);
    expect(fitRows(bowl(), 'bowl', asked).map(({ low, high, why }) => [low, high, why])).toEqual([
      ['100', '400', null],
      ['40', '160', null],
      ['', '', 'its grams are not known'],
    ]);
    const known = bowl();
    known.episode.segments[0]?.recipe?.lines.splice(2);
    const wish = wishOf(known, 'bowl', asked, 5);
    const found = await fitSteps(known, wish);
    if (!found.ok) throw new Error('not asked');
    // As worked out in recipe-fit.test.ts: 295 g of curd.
    expect(found.value).toMatchObject({ status: 'fits', steps: more });
    expect(structuredClone(found)).toEqual(found);
    expect(tellFit(known, wish, found.value)).toMatchObject({
      proven: true,
      targets: [{ verdict: 'met' }],
    });
  });

  it('keeps what the person said may not change, and limits of their own', () => {
    const asked = proposedFit(bowl(), 'bowl');
    const said = {
      ...asked,
      targets: [],
      limits: [{ nutrient: 'fat' as const, relation: 'atMost' as const, amount: 5 }],
      portionId: 'third',
      lines: asked.lines.filter(({ lineId }) => lineId !== 'curd'),
      strict: true,
    };
    const wish = wishOf(bowl(), 'bowl', said, 5);
    expect(wish).toMatchObject({
      certainty: 'range',
      targets: [{ nutrient: 'fat', portionId: 'third' }],
    });
    expect(wish.rules?.[0]).toMatchObject({ lineId: 'curd', kind: 'fixed' });
    expect(fitRows(bowl(), 'bowl', said).map(({ fixed }) => fixed)).toEqual([true, false]);
  });
});
