import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { NO_FACTS } from '#lib/claims/edit-facts';
import { holdFigure } from '#lib/claims/judge/hold-figure';
import { rightNumber } from '#lib/claims/judge/say-instead';
import { saidNutrient } from '#lib/claims/judge/said-number';
import { unitFactor } from '#lib/claims/judge/stated-unit';
import { readEdit } from '#lib/claims/read-edit';
import { readStatements } from '#lib/claims/read-statements';
import { parseEpisodeFile } from '#lib/episode/file';
import type { Figure } from '#lib/figures/figure';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';
import { rowsOf } from './edit-build';

/** 612 calories, likely 598 to 626, and 580 to 640 by the digits. */
const KNOWN: Figure = {
  nutrient: 'energyKcal',
  value: 612,
  low: 580,
  high: 640,
  likelyLow: 598,
  likelyHigh: 626,
  missing: [],
  provisional: [],
  sources: [],
};
const AT_LEAST: Figure = { ...KNOWN, high: null, likelyHigh: null };
const AT_MOST: Figure = { ...KNOWN, low: null, likelyLow: null };
const OPEN: Figure = { ...AT_LEAST, low: null, likelyLow: null };

function hold(words: string, figure: Figure, spoken = false) {
  const form = spoken ? 'captions' : 'description';
  const [read] = readStatements(words, { form, dishes: ['Stew'], dish: 'Stew' });
  if (read?.kind !== 'nutrient') throw new Error(`no nutrient in ${words}`);
  const said = saidNutrient(read, 1, spoken);
  return holdFigure(said, read.hedge, figure);
}

// The verdicts are the project's own definition (MODEL D.1, D.2); no source.
describe('what was said against 612, likely 598 to 626, at most 580 to 640', () => {
  test.each([
    ['612 calories', 'agrees'],
    // Its half a unit ends at 612.5, and at 611.5.
    ['613 calories', 'edge'],
    ['626 calories', 'edge'],
    ['627 calories', 'off'],
    ['598 calories', 'edge'],
    ['597 calories', 'off'],
    // Five per cent: 30.5 to either side, and 31.
    ['about 610 calories', 'agrees'],
    ['about 640 calories', 'agrees'],
    ['about 650 calories', 'edge'],
    ['about 660 calories', 'off'],
    ['just over 600 calories', 'agrees'],
    ['just over 612 calories', 'edge'],
    ['just over 626 calories', 'off'],
    ['almost 640 calories', 'agrees'],
    ['almost 612 calories', 'edge'],
    ['almost 598 calories', 'off'],
    ['between 600 and 620 calories', 'agrees'],
    ['between 620 and 640 calories', 'edge'],
    ['between 630 and 640 calories', 'off'],
    ['at least 598 calories', 'agrees'],
    ['at least 599 calories', 'edge'],
    ['at least 626 calories', 'edge'],
    ['at least 627 calories', 'off'],
    ['at most 626 calories', 'agrees'],
    ['at most 620 calories', 'edge'],
    ['at most 597 calories', 'off'],
    ['under 626 calories', 'edge'],
    ['under 627 calories', 'agrees'],
    ['under 598 calories', 'off'],
  ])('%s: %s', (words, verdict) => {
    expect(hold(words, KNOWN).verdict).toBe(verdict);
  });

  test('a ten that is said aloud covers five on each side, one that is written half of one', () => {
    expect(hold('610 calories', KNOWN, true).verdict).toBe('agrees');
    expect(hold('610 calories', KNOWN).verdict).toBe('edge');
    expect(hold('620 calories', KNOWN, true).verdict).toBe('edge');
    expect(
      hold('90 calories', { ...KNOWN, value: 93, low: 90, likelyLow: 92, likelyHigh: 94 }, true)
        .verdict,
    ).toBe('off');
  });

  test('digits behind the point count as they are written', () => {
    const fat: Figure = {
      ...KNOWN,
      nutrient: 'fat',
      value: 2.04,
      low: 1.9,
      high: 2.2,
      likelyLow: 1.98,
      likelyHigh: 2.1,
    };
    expect(hold('2 g of fat', fat).verdict).toBe('agrees');
    expect(hold('2.0 g of fat', fat).verdict).toBe('agrees');
    expect(hold('2.1 g of fat', fat).verdict).toBe('edge');
    expect(hold('2.00 g of fat', fat).verdict).toBe('edge');
    expect(hold('2.2 g of fat', fat).verdict).toBe('off');
    expect(
      hold('two and a half grams of fat', { ...fat, value: 2.3, likelyHigh: 2.4, high: 2.4 }, true)
        .verdict,
    ).toBe('agrees');
  });

  test('off within the digits is possible, beyond them it is not', () => {
    expect(hold('635 calories', KNOWN)).toEqual({ verdict: 'off', possible: true });
    expect(hold('650 calories', KNOWN)).toEqual({ verdict: 'off', possible: false });
  });

  test('a figure that is known on one side decides there alone', () => {
    expect(hold('590 calories', AT_LEAST).verdict).toBe('off');
    expect(hold('612 calories', AT_LEAST).verdict).toBe('unknown');
    expect(hold('900 calories', AT_LEAST).verdict).toBe('unknown');
    expect(hold('at least 590 calories', AT_LEAST).verdict).toBe('agrees');
    expect(hold('at least 612 calories', AT_LEAST).verdict).toBe('unknown');
    expect(hold('under 590 calories', AT_LEAST).verdict).toBe('off');
    expect(hold('under 900 calories', AT_LEAST).verdict).toBe('unknown');
    expect(hold('640 calories', AT_MOST).verdict).toBe('off');
    expect(hold('612 calories', AT_MOST).verdict).toBe('unknown');
    expect(hold('at most 700 calories', AT_MOST).verdict).toBe('agrees');
    expect(hold('at least 700 calories', AT_MOST).verdict).toBe('off');
  });

  test('an open figure decides nothing', () => {
    for (const words of ['612 calories', 'at least 1 calorie', 'under 9000 calories']) {
      expect(hold(words, OPEN).verdict).toBe('unknown');
    }
  });
});

describe('units', () => {
  // 21 CFR 101.9(c)(9): protein 50 g, fat 78 g, sodium 2300 mg, fibre 28 g.
  test.each([
    ['protein', '%DV', 0.5],
    ['fat', '%DV', 0.78],
    ['sodium', '%DV', 23],
    ['sodium', 'g', 1000],
    ['protein', 'mg', 0.001],
    ['protein', 'g', 1],
    ['protein', 'kcal', null],
    ['sugars', '%DV', null],
  ] as const)('one %s of %s', (nutrient, unit, factor) => {
    expect(unitFactor(nutrient, unit, 'US')).toBe(factor);
  });
});

/** 200 g of beans and 100 g of rice in halves: 100 + 130 kcal, 20 + 3 g of protein, 2 g of fat; weighed 400 g. */
const STEW = aDish(
  'stew',
  aRecipe('stew-r', [grams('200 g white beans', 'bean', 200), grams('100 g rice', 'rice', 100)], {
    portions: [{ id: 'half', kind: 'count', name: '', of: 2 }],
    weighings: [aReading('done', 'finished', 400)],
  }),
  { title: 'Bean stew', eaten: { num: 1, den: 2 } },
);
const CAKE = aDish('cake', aRecipe('cake-r', [grams('c', 'cake', 100)]), { title: 'Plum cake' });
const FOODS = [
  aFood(
    'bean',
    { energyKcal: '50.0', protein: '10.00', fat: '0.50', sodium: '100.0' },
    { name: 'Beans, white' },
  ),
  aFood(
    'rice',
    { energyKcal: '130.0', protein: '3.00', fat: '1.00', sodium: '5.0' },
    { name: 'Rice' },
  ),
  aFood('cake', { energyKcal: '300.0', protein: '5.00', fat: '9.00', sodium: '10.0' }),
];
const ALONE = aFile([STEW], FOODS, { resolutionMg: 1 });
const BOTH = aFile([STEW, CAKE], FOODS, { resolutionMg: 1 });

const verdicts = (words: string, file = ALONE) => rowsOf(file, words).map(({ verdict }) => verdict);

describe('what a number is of', () => {
  test.each([
    ['The whole pot has 230 calories.', 'agrees'],
    ['Half of it has 115 calories.', 'agrees'],
    ['One portion has 115 calories.', 'agrees'],
    ['One portion has 230 calories.', 'off'],
    ['Per 100 grams it has 6 grams of protein.', 'agrees'],
    ['For the day it is 115 calories.', 'agrees'],
    ['The beans alone are 100 calories.', 'agrees'],
    ['The beans alone are 230 calories.', 'off'],
    ['It is 80 calories less than the shop one.', 'unknown'],
    ['The whole pot has 205 milligrams of sodium.', 'agrees'],
    // 23 g of 50 g.
    ['The whole pot has 46% DV protein.', 'agrees'],
    // 92 of 230 kcal.
    ['40 percent of the calories in the whole pot come from protein.', 'agrees'],
  ])('%s %s', (words, verdict) => {
    expect([words, ...verdicts(words)]).toEqual([words, verdict]);
  });

  test('is not certain where all of it or one portion may be meant, and is said with both', () => {
    const [row] = rowsOf(ALONE, 'This stew has 230 calories.');
    expect(row?.verdict).toBe('unknown');
    expect(row?.why).toBe(
      'can’t say: is it of Bean stew, the whole dish (230 calories); Bean stew, one of 2 (115 calories)?',
    );
    expect(verdicts('This stew has 115 calories.')).toEqual(['unknown']);
    // Neither of them.
    expect(verdicts('This stew has 500 calories.')).toEqual(['off']);
  });

  test('is settled by the portion that its line names', () => {
    const named = {
      ...STEW,
      recipe: {
        ...STEW.recipe,
        portions: [{ id: 'half', kind: 'count' as const, name: 'a deep bowl', of: 2 }],
      },
    };
    const file = aFile([named as typeof STEW], FOODS, { resolutionMg: 1 });
    expect(
      rowsOf(file, 'Bean stew, a deep bowl: 115 kcal', 'card').map(({ verdict }) => verdict),
    ).toEqual(['agrees']);
  });

  test('is nobody’s to say where no dish is known, unless it is none of them', () => {
    expect(verdicts('The whole thing has 230 calories.', BOTH)).toEqual(['unknown']);
    expect(verdicts('The whole thing has 900 calories.', BOTH)).toEqual(['off']);
  });

  test('of a title of several dishes is the day', () => {
    const title = (words: string) => rowsOf(BOTH, words, 'title').map(({ verdict }) => verdict);
    expect(title('Two easy dishes, 415 calories')).toEqual(['agrees']);
    expect(title('Two easy dishes, 230 calories')).toEqual(['off']);
  });

  test('without any dish is said not to be known', () => {
    const [row] = rowsOf(aFile([], []), 'The whole thing has 230 calories.');
    expect([row?.verdict, row?.why]).toEqual([
      'unknown',
      'can’t say: no dish with ingredients is set up yet',
    ]);
  });

  test('with an ingredient without grams is open, and says which', () => {
    const open = aDish(
      'stew',
      aRecipe('r', [grams('b', 'bean', 200), aLine('salt to taste', null)]),
      { title: 'Bean stew' },
    );
    const [row] = rowsOf(aFile([open], FOODS), 'The whole pot has 100 calories.');
    expect(row?.verdict).toBe('unknown');
    expect(row?.why).toContain('no food chosen for salt to taste');
  });
});

describe('the words beside a verdict', () => {
  test('say the range, the difference and what is right, in the region’s words', () => {
    const [row] = rowsOf(ALONE, 'The whole pot has 290 calories.');
    expect(row).toMatchObject({
      verdict: 'off',
      why: 'Bean stew, the whole dish: 230 calories, likely 230',
      difference: '60 calories more than your breakdown',
      sayInstead: '230 calories',
      remark: null,
      against: {
        kind: 'figure',
        nutrient: 'energyKcal',
        scope: { kind: 'whole', segmentId: 'stew' },
      },
    });
    const eu = aFile([STEW], FOODS, { resolutionMg: 1, episode: { region: 'EU' } });
    expect(rowsOf(eu, 'The whole pot has 290 calories.')[0]).toMatchObject({
      difference: '60 kcal more than your breakdown',
      sayInstead: '230 kilocalories',
    });
  });

  test('keep the hedge', () => {
    const right = (words: string) => rowsOf(ALONE, words)[0]?.sayInstead;
    expect(right('The whole pot has about 30 grams of protein.')).toBe('about 23 grams of protein');
    expect(right('The whole pot has at least 30 grams of protein.')).toBe(
      'at least 22 grams of protein',
    );
    expect(right('The whole pot has under 20 grams of protein.')).toBe('under 24 grams of protein');
  });

  test('of an ingredient that waits are to be confirmed, and nothing is proposed', () => {
    const waits = aDish(
      'stew',
      aRecipe('r', [grams('beans', 'bean', 200, { match: 'provisional' })]),
      { title: 'Bean stew' },
    );
    const file = aFile([waits], FOODS, { resolutionMg: 1 });
    const [agrees, off] = rowsOf(file, 'The whole pot has 100 calories and 90 grams of protein.');
    expect([agrees?.verdict, agrees?.remark]).toEqual(['agrees', 'toConfirm']);
    expect([off?.verdict, off?.remark, off?.sayInstead]).toEqual(['off', 'toConfirm', null]);
    expect(off?.why).toContain('not confirmed yet: beans');
  });

  test('of the number that is published for it say so', () => {
    const [row] = rowsOf(ALONE, 'The whole pot has 230 calories.');
    expect([row?.remark, row?.why]).toEqual([
      'tally',
      'Bean stew, the whole dish: 230 calories, likely 230; it is the number that is published for it',
    ]);
  });
});

// MODEL C.4: the number that is published for its scope agrees, also where the tally moved it.
describe('a number that adds up with the others only because of rounding', () => {
  /** 10.4 of each in a dish, 20.8 on the day: printed 10 and 11, 21. */
  const values = { protein: '10.40', magnesium: '10.40' };
  const dish = (id: string, title: string) =>
    aDish(id, aRecipe(`r-${id}`, [grams(`l-${id}`, id, 100)]), { title });
  const file = aFile(
    [dish('one', 'Bean stew'), dish('two', 'Plum cake')],
    [aFood('one', values), aFood('two', values)],
    { resolutionMg: 1 },
  );
  const of = (noun: string, number: number) =>
    ['Bean stew', 'Plum cake'].flatMap((title) =>
      rowsOf(file, `${title}: the whole dish has ${number} ${noun}.`, 'description').map(
        ({ verdict, remark, sayInstead }) => ({ verdict, remark, sayInstead }),
      ),
    );

  test('agrees where that nutrient is counted, and says so', () => {
    const [first, second, ...others] = of('grams of protein', 11);
    expect(others).toEqual([]);
    expect([first?.verdict, second?.verdict].sort()).toEqual(['agrees', 'off']);
    expect([first?.remark, second?.remark]).toContain('tally');
  });

  test('is off where nobody counts it: no number of it was published', () => {
    const said = of('milligrams of magnesium', 11);
    expect(said.map(({ verdict }) => verdict)).toEqual(['off', 'off']);
    expect(said.map(({ sayInstead }) => sayInstead)).toEqual([
      '10 milligrams of magnesium',
      '10 milligrams of magnesium',
    ]);
    expect(
      of('milligrams of magnesium', 10).map(({ verdict, remark }) => [verdict, remark]),
    ).toEqual([
      ['agrees', null],
      ['agrees', null],
    ]);
  });
});

describe('the demo’s rehearsal', () => {
  const read = parseEpisodeFile(readFileSync('seed/demo.episode.json', 'utf8'));
  if (!read.ok) throw new Error('the demo is no episode');
  const { judged, named } = readEdit(read.value, NO_FACTS);
  const row = (words: string) =>
    judged.find(({ statement }) => statement.words.replace('\n', ' ') === words);

  // Verdicts by hand, from the dishes' printed figures: 1409 and 1362 and 1198 kcal, the day 1685.
  test.each([
    ['fourteen hundred and nine calories', 'agrees'],
    ['seven hundred and four', 'agrees'],
    ['about 12 grams of fiber', 'off'],
    ['about nine hundred milligrams', 'unknown'],
    ['thirteen sixty-two calories', 'agrees'],
    ['a hundred and twelve grams of protein', 'off'],
    ['just under 200 calories', 'agrees'],
    ['at least sixty grams of protein', 'agrees'],
    ['less than 25 grams of fat', 'off'],
    ['1,198 calories', 'agrees'],
    ['around 32 grams of carbs', 'agrees'],
    ['1,785 calories', 'off'],
    ['1,700 calories', 'edge'],
    ['1,685 CALORIES', 'agrees'],
    ['704 kcal', 'agrees'],
    ['43 g protein', 'off'],
  ])('%s: %s', (words, verdict) => {
    expect([words, row(words)?.verdict]).toEqual([words, verdict]);
  });

  test('names the digit that was misheard and what was never counted', () => {
    expect(row('fifteen grams of rolled oats')?.misheard[0]?.heard).toBe('50 grams of rolled oats');
    expect(named.map(({ food }) => food)).toContain('chili oil');
  });

  test('comes in the order of its times', () => {
    const times = judged.flatMap(({ place }) =>
      place.kind === 'captions' ? [place.startMs ?? 0] : [],
    );
    expect(times.length).toBeGreaterThan(40);
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });
});

describe('what is proposed in the place of a number', () => {
  // Likely 581 to 641: its range supports fifties, 600 is 11 off.
  const wide: Figure = { ...KNOWN, value: 611, likelyLow: 581, likelyHigh: 641 };
  const right = (said: number, hedge: 'none' | 'about' = 'none') =>
    rightNumber(wide, { hedge, unit: 'kcal', factor: 1, published: null, said })?.text;

  test('is never farther off than what was said', () => {
    expect([right(700), right(608), right(615), right(611.6)]).toEqual([
      'about 600',
      'about 610',
      'about 610',
      'about 611',
    ]);
    expect(right(650, 'about')).toBe('about 600');
  });
});
