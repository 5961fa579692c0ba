import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Pack } from '#lib/episode/stock-schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { explainNumber, type ViewerNumber } from '#lib/swap/another-number';
import { amountWords, nutrientLabel, nutrientWords } from '#lib/swap/amount-words';
import { replyText, slipSumText } from '#lib/swap/reply-words';
import { aDish, aFile, aFood, aLine, aRecipe, aVersion, grams } from '../support/build';

/** An invented stew of three portions; the numbers of each case are worked out by hand beside it. */
const meat = aFood(
  'meat',
  { energyKcal: '110', protein: '22.0', fat: '2.0', carbohydrate: '0', fibre: '0' },
  {
    name: 'Poultry breast',
    yields: [
      {
        id: 'y',
        method: 'roasted',
        rawMg: 100_000,
        cookedMg: 75_000,
        source: 'a table',
        own: null,
      },
    ],
  },
  { state: 'raw' },
);
const beans = aFood(
  'beans',
  { energyKcal: '80', protein: '5.0', fat: '0.4', carbohydrate: '14.0', fibre: '6.0' },
  { name: 'Tinned beans', kind: 'label', witnessId: 'table' },
);
const table = aFood(
  'table',
  { energyKcal: '91', protein: '6.1', fat: '0.5', carbohydrate: '16.0', fibre: '5.5' },
  { name: 'Beans, canned' },
);
const oil = aFood(
  'oil',
  { energyKcal: '884', protein: '0', fat: '100', carbohydrate: '0', fibre: '0' },
  { name: 'oil', section: 'oilsAndSauces' },
);
const drained: Pack = {
  ...{ id: 'p', foodId: 'beans', name: 'a tin', netMg: 400_000, netMl: null, drainedMg: 240_000 },
  ...{ gtin: null, stepMg: null, prices: [], price: null },
};
const lines = [
  grams('meat', 'meat', 600, { state: 'raw' }),
  grams('beans', 'beans', 400),
  grams('oil', 'oil', 30),
];
const portions = [{ id: 'third', kind: 'count' as const, name: 'a plate', of: 3 }];
const stew: EpisodeFile = {
  ...aFile(
    [aDish('stew', aRecipe('r', lines, { portions }), { title: 'Bean stew' })],
    [meat, beans, table, oil],
  ),
  packs: [drained],
};
// 600 × 1.10 + 400 × 0.80 + 30 × 8.84 = 660 + 320 + 265.2 = 1,245.2 kcal, a third 415.07.

const asked = (amount: number, more: Partial<ViewerNumber> = {}): ViewerNumber => ({
  ...{ nutrient: 'energyKcal', amount, decimals: 0, about: false, segmentId: 'stew', scope: null },
  ...more,
});
const codes = (amount: number, more?: Partial<ViewerNumber>) =>
  explainNumber(stew, asked(amount, more), {
    versions: new Map([
      [
        'beans',
        [aVersion('beans', { energyKcal: '100' }, { id: 'beans-v0', dateRead: '2025-03-01' })],
      ],
    ]),
  })?.explained.map(({ slip }) => slip.code);

function replyTo(file: EpisodeFile, amount: number): string {
  const found = explainNumber(file, asked(amount));
  if (!found) throw new Error('no dish');
  return replyText(file, found, '2026-11-29');
}

describe('a viewer’s number', () => {
  it.each([
    ['the oil left out: 980 / 3', 327, 'fatLeftOut:oil'],
    [
      'raw grams taken for cooked, 0.75 of which is cooked: (880 + 585.2) / 3',
      488,
      'cookedForRaw:meat',
    ],
    ['the whole for a portion', 1245, 'otherPart:whole'],
    ['another label of the beans: (660 + 400 + 265.2) / 3', 442, 'otherLabel:beans'],
    ['a table’s beans for the label’s: (660 + 364 + 265.2) / 3', 430, 'referenceFood:beans'],
    ['drained beans, 240 of 400 g: (660 + 192 + 265.2) / 3', 372, 'drained:beans'],
    ['the beans forgotten: 925.2 / 3', 308, 'forgotten:beans'],
    ['the meat twice: 1905.2 / 3', 635, 'doubled:meat'],
    ['half of a portion', 208, 'half'],
    ['four portions instead of three: 1245.2 / 4', 311, 'otherPortions:4'],
  ])('is explained: %s', (_, amount, code) => {
    expect(codes(amount)).toContain(code);
  });

  it('is explained by its fibre, and by its kilojoules', () => {
    // 400 g at 14 g of carbohydrate less 6 g of fibre: 32 g, a third 10.7.
    expect(codes(10.7, { nutrient: 'carbohydrate', decimals: 1 })).toEqual(['lessFibre']);
    // 17, 37, 17 and 8 kJ a gram (Regulation (EU) 1169/2011, Annex XIV): 152 g protein, 43.6 g fat, 32 g and 24 g.
    const kj = (152 * 17 + 43.6 * 37 + 32 * 17 + 24 * 8) / 3;
    expect(codes(Math.round(kj))).toContain('kilojoules');
  });

  it('that is the breakdown’s own is said to be the same, and one that no step gives is not explained', () => {
    expect(explainNumber(stew, asked(415))).toMatchObject({ standing: 'same', explained: [] });
    expect(explainNumber(stew, asked(777))).toMatchObject({ standing: 'unexplained' });
    expect(explainNumber(stew, asked(415, { segmentId: 'gone' }))).toBeNull();
  });

  it('is never explained by a number that is not within it, and each sum comes to its number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2600 }), fc.boolean(), (amount, about) => {
        const found = explainNumber(stew, asked(amount, { about }));
        if (!found) throw new Error('no dish');
        for (const { sum, value } of found.explained) {
          expect(value).toBeGreaterThanOrEqual(found.from);
          expect(value).toBeLessThanOrEqual(found.to);
          const inside = sum.rows.reduce((all, row) => all + (row.value ?? NaN), 0);
          const beside = sum.beside.reduce((all, row) => all + (row.value ?? NaN), 0);
          expect(inside * (sum.share ?? NaN) + beside).toBeCloseTo(value, 8);
        }
        const order = found.explained.map(({ slip, value, slight }) => [
          slip.kind === 'otherPortions' ? 0 : slight ? 2 : 1,
          Math.abs(value - amount),
        ]);
        const sorted = order.toSorted(([a = 0, x = 0], [b = 0, y = 0]) => a - b || x - y);
        expect(order).toEqual(sorted);
      }),
      { numRuns: 150 },
    );
  });

  it('our own sum is the figure', () => {
    const figures = episodeFigures(stew, ['energyKcal', 'protein']).dishes[0];
    for (const nutrient of ['energyKcal', 'protein'] as const) {
      const whole = explainNumber(stew, asked(1, { nutrient, scope: { kind: 'whole' } }));
      const third = explainNumber(stew, asked(1, { nutrient }));
      const day = explainNumber(stew, asked(1, { nutrient, scope: { kind: 'day' } }));
      expect(whole?.ours.value).toBeCloseTo(figures?.whole[nutrient]?.value ?? NaN, 9);
      expect(third?.ours.value).toBeCloseTo(
        figures?.portions[0]?.figures[nutrient]?.value ?? NaN,
        9,
      );
      expect(day?.ours.value).toBeCloseTo(figures?.eaten[nutrient]?.value ?? NaN, 9);
    }
  });

  it('of a dish with an unknown ingredient is explained only where that is left out', () => {
    const open = structuredClone(stew);
    open.episode.segments[0]?.recipe?.lines.push(aLine('herb', null, { text: 'a mystery paste' }));
    expect(explainNumber(open, asked(327))).toMatchObject({ standing: 'open', explained: [] });
    const found = explainNumber(open, asked(415));
    expect(found?.explained.map(({ slip }) => slip.code)).toEqual(['forgotten:herb']);
    const text = replyTo(open, 327);
    expect(text).toContain('it is still open (nobody knows yet: a mystery paste)');
  });
});

describe('the reply', () => {
  const reply = (amount: number) => replyTo(stew, amount);

  it('names the step, both numbers with their units and the breakdown’s date, and blames nobody', () => {
    expect(reply(327)).toBe(
      'Thanks for doing the sums. I think I see where 327 calories may come from: without the oil it comes to 327 calories; the breakdown of 29 Nov 2026 has 415 calories a portion. Could it be that? If not, one of my own lines may be off: if you tell me which ingredients and weights you used, I’ll gladly go through them line by line.',
    );
    expect(reply(415)).toContain(
      'I get the same in the breakdown of 29 Nov 2026: 415 calories a portion',
    );
    expect(reply(777)).toContain('couldn’t find the one difference that gives 777 calories');
    for (const amount of [327, 415, 777, 1245]) {
      expect(reply(amount)).not.toMatch(/wrong|mistake|error|!|you forgot/i);
    }
  });

  it('says that it is one way of several where more than one difference gives the number', () => {
    const found = explainNumber(stew, asked(327));
    if (!found) throw new Error('no dish');
    const two = { ...found, explained: [...found.explained, ...found.explained] };
    expect(replyText(stew, two, '2026-11-29')).toContain(
      'Thanks for doing the sums. One way to 327 calories: without the oil it comes to 327 calories; the breakdown of 29 Nov 2026 has 415 calories a portion. Could it be that?',
    );
  });

  it('gives the number that was published, where that is a step off the sum', () => {
    const found = explainNumber(stew, asked(416), { published: 416 });
    if (!found) throw new Error('no dish');
    expect(found.standing).toBe('same');
    const text = replyText(stew, found, '2026-11-29', { number: '416', why: '' });
    expect(text).toContain(
      'I get the same in the breakdown of 29 Nov 2026: 416 calories a portion',
    );
    const open = explainNumber(stew, asked(777));
    const waits = { number: null, why: 'no food chosen for herbs' };
    expect(open && replyText(stew, open, '2026-11-29', waits)).toContain(
      'it is still open (no food chosen for herbs)',
    );
  });

  it('calls energy as the episode’s region does, the slip too', () => {
    const inEu: EpisodeFile = { ...stew, episode: { ...stew.episode, region: 'EU' } };
    const told = (file: EpisodeFile, amount: number, nutrient: ViewerNumber['nutrient']) => {
      const found = explainNumber(file, { ...asked(amount), nutrient });
      return found ? replyText(file, found, '2026-11-29') : '';
    };
    const kcal = told(inEu, 327, 'energyKcal');
    expect(kcal).toContain('327 kcal may come from: without the oil it comes to 327 kcal;');
    expect(kcal).toContain('has 415 kcal a portion');
    const words = (file: EpisodeFile, nutrient: ViewerNumber['nutrient'], code: string) => {
      const other = nutrient === 'energyKcal' ? 'energyKj' : 'energyKcal';
      const theirs = explainNumber(file, { ...asked(1), nutrient: other })?.ours.value ?? 0;
      const number = { ...asked(Math.round(theirs)), nutrient };
      const slip = explainNumber(file, number)?.explained.find((each) => each.slip.code === code);
      return slip?.slip.words;
    };
    expect(words(stew, 'energyKcal', 'kilojoules')).toBe('as kilojoules (kJ) instead of calories');
    expect(words(inEu, 'energyKcal', 'kilojoules')).toBe(
      'as kilojoules (kJ) instead of kilocalories',
    );
    expect(words(inEu, 'energyKj', 'kilojoules')).toBe(
      'as kilocalories (kcal) instead of kilojoules',
    );
    expect(amountWords('energyKj', 2678, 'EU')).toBe('2678 kJ');
    expect(nutrientWords('energyKcal', 'EU')).toBe('kcal');
    expect(nutrientLabel('energyKcal', 'EU')).toBe('energy, kcal');
    expect(nutrientLabel('energyKcal', 'US')).toBe('calories');
  });

  it('has its sum line by line', () => {
    const found = explainNumber(stew, asked(327));
    const [first] = found?.explained ?? [];
    if (!found || !first) throw new Error('not explained');
    expect(slipSumText(found, first).split('\n')).toEqual([
      'meat, 600 g: 660',
      'beans, 400 g: 320',
      'oil, 0 g: 0 (in the breakdown 265)',
      'Together: 980 kcal',
      '× 0.333 (a portion)',
      '= 327 kcal',
    ]);
  });
});

/** 600 g at 110 kcal, 100 g at 300 and 115 g at 40 are 660 + 300 + 46 = 1,006 kcal, a half of it 503. */
describe('another food or another tray', () => {
  const quark = (level: string, energyKcal: string) =>
    aFood(
      level,
      { energyKcal, protein: '20.0', fat: '10.0', carbohydrate: '2.0' },
      { name: `Cheese, quark, ${level} milk`, section: 'dairyAndEggs' },
    );
  const [whole, part] = [quark('whole', '300'), quark('part skim', '254')];
  const leek = aFood('leek', { energyKcal: '40', protein: '1.5', fat: '0.3', carbohydrate: '8' });
  const bake = (text: string): EpisodeFile => {
    const of = [
      grams('meat', 'meat', 600, { state: 'raw' }),
      grams('quark', 'whole', 100, { text }),
      grams('leek', 'leek', 115),
    ];
    const halves = [{ id: 'half', kind: 'count' as const, name: 'a half', of: 2 }];
    const dish = aDish('stew', aRecipe('r', of, { portions: halves }), { title: 'Leek bake' });
    return aFile([dish], [meat, whole, leek]);
  };
  const variants = new Map([['whole', [part]]]);
  const reply = (text: string, amount: number, known: typeof variants = new Map()) => {
    const found = explainNumber(bake(text), asked(amount), { variants: known });
    if (!found) throw new Error('no dish');
    const order = found.explained.map(({ slip }) => slip.code);
    return { order, text: replyText(bake(text), found, '2026-11-29') };
  };

  it('comes before a small ingredient that gives the same by chance: (660 + 254 + 46) / 2', () => {
    const told = reply('100 g quark', 480, variants);
    expect(told.order).toEqual(['otherVariant:quark:part skim', 'forgotten:leek']);
    expect(told.text).toContain(
      'with the quark as “part skim milk”, where the breakdown has “whole milk”, it comes to 480 calories; the breakdown of 29 Nov 2026 has 503 calories a portion. Could it be that?',
    );
  });

  it('is told as the viewer’s good right where the ingredient’s own words say so', () => {
    const told = reply('100 g part-skim quark', 480, variants);
    expect(told.text).toContain('Yours may well be the right one: I’ll look at that line of mine');
  });

  it('is told by the number of portions: 1,006 / 3', () => {
    const told = reply('100 g quark', 335);
    expect(told.order).toEqual(['otherPortions:3']);
    expect(told.text).toContain('as one of 3 portions instead of 2 it comes to 335 calories');
  });

  it('states no cause where only a small ingredient gives the number: 960 / 2', () => {
    const told = reply('100 g quark', 480);
    expect(told.order).toEqual(['forgotten:leek']);
    expect(told.text).toBe(
      'Thanks for doing the sums. In the breakdown of 29 Nov 2026 it comes to 503 calories a portion. 480 calories is so near to it that many a small thing may be between them, as without the leek (480 calories), and one of my own lines may be off. If you tell me which ingredients and weights you used, I’ll gladly go through them line by line.',
    );
  });

  it('is never said to be easily mixed up', () => {
    for (let amount = 50; amount < 1100; amount += 3) {
      expect(reply('100 g quark', amount, variants).text).not.toMatch(/easily|mixed up/);
    }
  });
});
