import { describe, expect, it } from 'vitest';
import { allergenList } from '#lib/publish/allergen-list';
import { description } from '#lib/publish/description';
import { DEFAULT_LAYOUT } from '#lib/publish/description/layout';
import type { AllergenFact } from '#lib/foods/food';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, aTalk, grams } from '../support/build';
import { UNSAID_STEP } from '#lib/episode/unsaid';

const fact = (
  allergen: AllergenFact['allergen'],
  standing: AllergenFact['standing'],
): AllergenFact => ({
  id: `${allergen}-${standing}`,
  allergen,
  standing,
  reason: '',
});

const macros = { energyKcal: '100', protein: '10.0', fat: '2.0', carbohydrate: '8.0' };
const skyr = aFood('skyr', macros, {
  kind: 'label',
  name: 'Fjordlea skyr',
  allergens: [fact('milk', 'declared'), fact('treeNuts', 'mayContain')],
});
const oats = aFood('oats', macros, {
  name: 'Oats',
  allergens: [fact('glutenCereals', 'proposed'), fact('wheat', 'proposed')],
});
const pots = aDish(
  'pots',
  aRecipe(
    'r',
    [grams('2 tubs of skyr', 'skyr', 400), grams('80 g oats', 'oats', 80, { state: 'dry' })],
    {
      portions: [{ id: 'p', kind: 'count', name: 'One of four', of: 4 }],
      weighings: [
        aReading('w', 'raw', 410, {
          shares: [{ lineId: '2 tubs of skyr', share: { num: 1, den: 1 } }],
        }),
      ],
      method: 'Stir, top, chill.',
    },
  ),
  { title: 'Skyr pots', inFrame: 250 },
);
const talk = (id: string, inFrame: number) => aTalk(id, { title: id, inFrame });
const whole = aFile([talk('Hook', 0), pots, talk('Goodbye', 5000)], [skyr, oats], {
  episode: {
    title: 'Four pots',
    hook: 'Breakfast for four days.',
    anythingElse: { kind: 'nothing' },
    webLinks: [{ id: 'w', label: 'Scale', url: 'https://example.org/scale' }],
  },
});

describe('the description', () => {
  it('is whole: chapters, dish, portions, ingredients with grams and state, day, allergens, cautions, links', () => {
    expect(description(whole).text).toBe(
      [
        'Four pots',
        '',
        'Breakfast for four days.',
        '',
        '0:00 Hook',
        '0:10 Skyr pots',
        '3:20 Goodbye',
        '',
        'SKYR POTS',
        'The whole dish: 490 kcal · 49 g protein · 10 g fat · 39 g carbohydrate',
        'One of four: 123 kcal · 12 g protein · 2 g fat · 10 g carbohydrate',
        '- 2 tubs of skyr (410 g, as sold)',
        '- 80 g oats (dry)',
        'Stir, top, chill.',
        '',
        'THE WHOLE DAY: 490 kcal · 49 g protein · 10 g fat · 39 g carbohydrate',
        'Calories eaten, kcal: Skyr pots 490',
        '',
        'Allergens: contains milk.',
        'May contain tree nuts.',
        'Not all ingredients have been checked for allergens yet, so more may be in it: check the labels of what you use, and ask a clinician if you have an allergy.',
        '',
        'Nutrition figures are computed from the sources named and are for information only, not dietary or medical advice.',
        '',
        'Scale: https://example.org/scale',
        '',
        'Sources of the figures: test table 1; package labels (Fjordlea skyr).',
      ].join('\n'),
    );
  });

  it('counts its length both ways and holds it against the limit', () => {
    const long = { ...whole, episode: { ...whole.episode, hook: '🍳'.repeat(10) } };
    const { text, length, fits } = description(long);
    expect(length.utf16Units - length.codePoints).toBe(10);
    expect(length.utf16Units).toBe(text.length);
    expect(fits).toBe(true);
    const limited = (limit: number) =>
      description(long, undefined, { layout: { ...DEFAULT_LAYOUT, limit } });
    expect(limited(length.codePoints)).toMatchObject({ fits: true, drops: [] });
    const short = limited(length.codePoints - 1);
    expect(short.fits).toBe(false);
    // What it would come to without a part is counted as what it comes to now.
    const [first] = short.drops;
    const part = first ? [first.part] : [];
    expect(description(long, undefined, { without: part }).length.codePoints).toBe(first?.left);
    const hook = short.drops.find((drop) => drop.part === 'hook');
    expect(hook?.saves).toBe(10 + 2);
  });

  it('reads "the dishes shown" until the person has said what else was eaten', () => {
    const unsaid = { ...whole, episode: { ...whole.episode, anythingElse: null } };
    const two = {
      ...unsaid,
      episode: { ...unsaid.episode, segments: [pots, { ...pots, id: 'again', title: 'Again' }] },
    };
    expect(description(two).text).toContain('THE DISHES SHOWN: 980 kcal');
    expect(description(two).open.map((open) => open.title)).toContain('The day');
    // Nobody has said how much was eaten: all that is known is what was made.
    expect(description(two).text).toContain(
      'All that was made, calories, kcal: Skyr pots 490 + Again 490',
    );
    expect(description(two).text).not.toMatch(/eaten/i);
    const part = (eaten: { num: number; den: number }) => ({
      ...two,
      episode: {
        ...two.episode,
        segments: [
          { ...pots, eaten },
          { ...pots, id: 'again' },
        ],
      },
    });
    expect(description(part({ num: 1, den: 4 })).text).toContain('Calories eaten, kcal: Skyr pots');
    expect(description(part({ num: 0, den: 1 })).text).toContain('Calories eaten, kcal: Skyr pots');
    expect(description(unsaid).text).not.toContain('THE WHOLE DAY');
    const other = {
      ...two,
      episode: {
        ...two.episode,
        anythingElse: { kind: 'notCounted' as const, what: 'two coffees' },
      },
    };
    expect(description(other).text).toContain('Not counted: two coffees');
    expect(description(other).text).toContain('Calories eaten, kcal: Skyr pots 490 + Again 490');
  });

  it('names an open dish and keeps the rest', () => {
    const open = aDish('open', aRecipe('ro', [aLine('mystery', null)]), { title: 'Mystery' });
    const file = { ...whole, episode: { ...whole.episode, segments: [pots, open] } };
    const { text, open: told } = description(file);
    expect(text).toContain(
      'The whole dish: calories open · protein open · fat open · carbohydrate open',
    );
    expect(text).toContain('Open: no food chosen for mystery');
    expect(text).toContain('- mystery (not weighed)');
    expect(text).toContain('One of four: 123 kcal');
    expect(told).toContainEqual({
      segmentId: 'open',
      title: 'Mystery',
      reason: 'no food chosen for mystery',
    });
  });

  it('leaves broken chapters out and names the rule', () => {
    const file = { ...whole, episode: { ...whole.episode, segments: [talk('Hook', 0), pots] } };
    expect(description(file).text).not.toContain('0:00');
    expect(description(file).chapterFaults.map((fault) => fault.rule)).toEqual(['atLeastThree']);
  });

  it('gives inside temperatures with their rest and defers to the local code', () => {
    const step = {
      id: 's',
      title: 'Bake',
      role: 'cook' as const,
      lowS: 60,
      usualS: 60,
      highS: 60,
      choose: null,
      hands: false,
      burners: 0,
      racks: 0,
      oven: null,
      coreMilliC: 73_900,
      restS: 600,
      onCamera: false,
      daylight: false,
      note: '',
      ...UNSAID_STEP,
    };
    const file = {
      ...whole,
      episode: { ...whole.episode, segments: [{ ...pots, steps: [step] }] },
    };
    // FoodSafety.gov chart: poultry 165 °F, 73.9 °C.
    expect(description(file).text).toContain('Skyr pots: 74 °C (165 °F) inside, then rest 10 min.');
    expect(description(file).text).toContain('Follow your local food safety code');
  });
});

describe('a portion in the description', () => {
  it.each([
    ['one of 5', 5, '1 of 5 portions: '],
    ['One of 5', 5, '1 of 5 portions: '],
    ['one of 4', 5, 'One of 4: '],
    ['a bowl', 4, 'A bowl: '],
  ])('named %s of %i is told as %s', (name, of, told) => {
    const recipe = {
      ...aRecipe('r', [grams('skyr', 'skyr', 100)]),
      portions: [{ id: 'p', kind: 'count' as const, name, of }],
    };
    expect(description(aFile([aDish('d', recipe)], [skyr])).text).toContain(`\n${told}`);
  });
});

describe('an ingredient in the description', () => {
  it('keeps the household amount where its words have no number', () => {
    const tbsp = {
      id: 'm',
      name: 'tbsp',
      qtyNum: 1,
      qtyDen: 1,
      massMg: 13_500,
      digits: 1,
      source: 'SR28',
    };
    const oil = aFood('oil', macros, { measures: [tbsp] });
    const two = { low: { num: 2, den: 1 }, high: { num: 2, den: 1 } };
    const line = (text: string) => ({ ...aLine(text, 'oil', { quantity: two, unit: 'tbsp' }) });
    const file = aFile(
      [aDish('d', aRecipe('r', [line('olive oil'), line('2 big spoons of oil')]))],
      [oil],
    );
    expect(description(file).text).toContain('- olive oil (2 tbsp, 27 g, as sold)');
    expect(description(file).text).toContain('- 2 big spoons of oil (27 g, as sold)');
  });
});

describe('allergens', () => {
  it('publish what a label declares or the person confirms; proposals wait', () => {
    const list = allergenList(whole);
    expect(list.contains.map((entry) => entry.allergen)).toEqual(['milk']);
    expect(list.proposed.map((entry) => entry.allergen)).toEqual(['wheat']);
    expect(description(whole).unconfirmedAllergens).toHaveLength(1);
    expect(description(whole).text).not.toContain('wheat');
  });

  it('are not called complete while proposals wait, and no proposal is named', () => {
    const told = 'Not all ingredients have been checked for allergens yet';
    expect(description(whole).text).toContain('Allergens: contains milk.');
    expect(description(whole).text).toContain(told);
    const only = { ...whole, foods: [{ ...skyr, allergens: [] }, oats] };
    expect(description(only).text).toContain(told);
    expect(description(only).text).not.toMatch(/wheat|contains/);
    const checked = { ...oats, allergens: [fact('wheat', 'denied')] };
    const { text } = description({ ...whole, foods: [skyr, checked] });
    expect(text).not.toContain(told);
    expect(text).toContain('This list may be incomplete');
  });

  // Regulation (EU) 1169/2011, Annex II, 1: cereals containing gluten, namely wheat …
  it('of wheat are cereals containing gluten in the EU', () => {
    const wheat = {
      ...oats,
      allergens: [fact('wheat', 'declared'), fact('glutenCereals', 'denied')],
    };
    const file = {
      ...whole,
      foods: [skyr, wheat],
      episode: { ...whole.episode, region: 'EU' as const },
    };
    expect(description(file).text).toContain('contains cereals containing gluten, milk');
  });

  // Regulation (EU) 1169/2011, Annex II; FALCPA 2004 and FASTER Act 2021.
  it('follow the region: gluten cereals and molluscs in the EU only', () => {
    const confirmed = [
      fact('glutenCereals', 'confirmed'),
      fact('molluscs', 'declared'),
      fact('wheat', 'denied'),
    ];
    const file = (region: 'US' | 'EU') => ({
      ...whole,
      foods: [skyr, { ...oats, allergens: [...confirmed, fact('wheat', 'proposed')] }],
      episode: { ...whole.episode, region },
    });
    expect(allergenList(file('EU')).contains.map((e) => e.allergen)).toEqual([
      'glutenCereals',
      'milk',
      'molluscs',
    ]);
    expect(allergenList(file('US')).contains.map((e) => e.allergen)).toEqual(['milk']);
    expect(allergenList(file('US')).proposed).toEqual([]);
  });

  it('does not say grams twice where the words have them in brackets', () => {
    const rocket = grams('a handful of rocket (20 g)', 'oats', 20, { state: 'raw' });
    const { text } = description(aFile([aDish('d', aRecipe('r', [rocket]))], [oats]));
    expect(text).toContain('- a handful of rocket (20 g) (raw)');
  });

  it.each([
    ['a pinch of salt, 0.6 g', 0.6, '- a pinch of salt, 0.6 g (raw)'],
    ['200 g cod, in 2 pieces', 200, '- 200 g cod, in 2 pieces (raw)'],
    // Grams of other digits, or of a part of it, are not those that are counted, and it is said which are.
    ['1 zucchini, about 320 g', 318, '- 1 zucchini, about 320 g (counted: 318 g, raw)'],
    ['2 bars of 50 g', 100, '- 2 bars of 50 g (counted: 100 g, raw)'],
    ['a 4200 g ham', 200, '- a 4200 g ham (counted: 200 g, raw)'],
  ])('says the grams of “%s” once, where they are the same', (words, g, told) => {
    const line = grams(words, 'oats', g, { state: 'raw' });
    expect(description(aFile([aDish('d', aRecipe('r', [line]))], [oats])).text).toContain(told);
  });
});
