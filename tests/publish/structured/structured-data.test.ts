import { readFileSync } from 'node:fs';
import type { NutritionInformation, Recipe, WithContext } from 'schema-dts';
import { describe, expect, it } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import { UNSAID_STEP } from '#lib/episode/unsaid';
import { episodeFigures } from '#lib/figures/episode-figures';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { takeLock } from '#lib/lock/numbers-lock';
import { numbersToPublish } from '#lib/publish/from-lock';
import { jsonLd, structuredData } from '#lib/publish/structured/structured-data';
import { readIsoDuration } from '#lib/units/iso-duration';
import { aDish, aFile, aFood, aReading, aRecipe, aTalk, grams } from '../../support/build';
import { nodesIn, propertiesOf } from './vocabulary';

const dataOf = (file: EpisodeFile) => {
  const figures = episodeFigures(file);
  return structuredData({ file, figures, numbers: publishedNumbers(file, figures) });
};

// 400 g of it are 960 kcal, 36 g of fat and 600 mg of sodium: a quarter has 240 kcal, 9 g and 150 mg.
const panel = {
  energyKcal: '240',
  protein: '12.0',
  fat: '9.0',
  saturated: '2.0',
  cholesterol: '0',
  sodium: '150',
  carbohydrate: '27.0',
  fibre: '3.0',
  sugars: '6.0',
};
const step = (title: string, role: Step['role'], usualS: number): Step => ({
  ...UNSAID_STEP,
  id: title,
  title,
  role,
  lowS: 60,
  usualS,
  highS: usualS,
  choose: null,
  hands: true,
  burners: 0,
  racks: 0,
  oven: null,
  coreMilliC: null,
  restS: 0,
  onCamera: false,
  daylight: false,
  note: '',
});
const tray = (more: Partial<Segment> = {}, values: Record<string, string> = panel): EpisodeFile =>
  aFile(
    [
      aTalk('Hook', { inFrame: 0 }),
      aDish(
        'tray',
        aRecipe('r', [grams('400 g oat batter', 'oats', 400)], {
          portions: [{ id: 'p', kind: 'count', name: 'a quarter', of: 4 }],
          weighings: [aReading('w', 'finished', 360)],
          method: '1. Stir.\n2) Bake until it sets.\n\n',
        }),
        {
          title: 'Oat tray',
          inFrame: 250,
          steps: [
            step('Stir', 'prep', 900),
            step('Bake', 'cook', 2700),
            step('Cool', 'wait', 1800),
            step('Eat', 'eat', 600),
          ],
          ...more,
        },
      ),
      aTalk('Goodbye', { inFrame: 5000, outFrame: 6000 }),
    ],
    [aFood('oats', values, { name: 'Oat batter' })],
    { episode: { title: 'A tray for four', hook: 'Four breakfasts.', publishOn: '2026-03-07' } },
  );

const ofType = (file: EpisodeFile, type: string) =>
  nodesIn(JSON.parse(dataOf(file).json)).filter((node) => node.type === type);
const valuesOf = (file: EpisodeFile, type: string): Record<string, unknown> =>
  Object.fromEntries(ofType(file, type)[0]?.entries ?? []);

const demo = parseEpisodeFile(
  readFileSync(new URL('../../../seed/demo.episode.json', import.meta.url), 'utf8'),
);
if (!demo.ok) throw new Error('the demo does not read');
const FILES: readonly (readonly [string, EpisodeFile])[] = [
  ['a tray', tray()],
  ['the demo', demo.value],
  ['an empty episode', aFile([], [])],
];

describe('structured data', () => {
  it('is the Recipe of a dish with the nutrition of one portion, as schema.org writes values', () => {
    // The declarations of the vocabulary check this literal while it compiles.
    const expected: WithContext<Recipe> = {
      '@context': 'https://schema.org',
      '@type': 'Recipe',
      '@id': '#dish-tray',
      name: 'Oat tray',
      author: { '@type': 'Person', name: 'Ines Quay' },
      recipeYield: '4 portions',
      prepTime: 'PT15M',
      cookTime: 'PT45M',
      totalTime: 'PT1H30M',
      recipeIngredient: ['400 g oat batter (as sold)'],
      recipeInstructions: [
        { '@type': 'HowToStep', position: 1, text: 'Stir.' },
        { '@type': 'HowToStep', position: 2, text: 'Bake until it sets.' },
      ],
      nutrition: {
        '@type': 'NutritionInformation',
        servingSize: '90 g (1 of 4 portions)',
        // Form and wording: schema.org 30.0, NutritionInformation, Energy, Mass.
        calories: '240 calories',
        fatContent: '9 g',
        saturatedFatContent: '2 g',
        cholesterolContent: '0 mg',
        sodiumContent: '150 mg',
        carbohydrateContent: '27 g',
        fiberContent: '3 g',
        sugarContent: '6 g',
        proteinContent: '12 g',
      },
      video: { '@id': '#video' },
    };
    const { '@context': context, ...recipe } = expected;
    const graph = dataOf(tray()).graph;
    expect(graph['@context']).toBe(context);
    expect(graph['@graph'][1]).toEqual(recipe);
    expect(dataOf(tray()).left.map(({ what }) => what)).toEqual([
      'address and still',
      'day of publishing',
    ]);
  });

  it('is the video with its chapters as clips, in seconds', () => {
    expect(valuesOf(tray(), 'VideoObject')).toMatchObject({
      name: 'A tray for four',
      description: 'Four breakfasts.',
      duration: 'PT4M',
      hasPart: [
        { '@type': 'Clip', name: 'Hook', startOffset: 0, endOffset: 10 },
        { '@type': 'Clip', name: 'Oat tray', startOffset: 10, endOffset: 200 },
        { '@type': 'Clip', name: 'Goodbye', startOffset: 200, endOffset: 240 },
      ],
    });
  });

  it.each(FILES)('uses only properties that its types have: %s', (_, file) => {
    const nodes = nodesIn(JSON.parse(dataOf(file).json));
    expect(nodes.length).toBeGreaterThan(0);
    const unknown = nodes.flatMap(({ path, type, entries }) =>
      entries
        .filter(([property]) => !propertiesOf(type).has(property))
        .map(([property]) => `${path} ${type} ${property}`),
    );
    expect(unknown).toEqual([]);
  });

  it('would find a property of another type, and one that there is none of', () => {
    expect(propertiesOf('Recipe')).toContain('recipeYield');
    expect(propertiesOf('Recipe')).toContain('name');
    expect(propertiesOf('HowToStep')).toContain('position');
    expect(propertiesOf('Clip')).not.toContain('recipeYield');
    expect(propertiesOf('NutritionInformation')).not.toContain('saltContent');
  });

  it.each(FILES)('keeps every value in the form and the range of its kind: %s', (_, file) => {
    const { json } = dataOf(file);
    for (const { type, entries } of nodesIn(JSON.parse(json))) {
      const value = new Map(entries);
      for (const [name, of] of entries) {
        if (/^(prep|cook|total)Time$|^duration$/.test(name))
          expect(readIsoDuration(String(of)).kind).toBe('seconds');
        if (name === 'calories') expect(of).toMatch(/^\d+(\.\d+)? calories$/);
        else if (/Content$/.test(name)) expect(of).toMatch(/^\d+(\.\d+)? m?g$/);
      }
      if (type !== 'Clip') continue;
      expect(value.get('startOffset')).toBeGreaterThanOrEqual(0);
      if (value.has('endOffset'))
        expect(value.get('endOffset')).toBeGreaterThan(Number(value.get('startOffset')));
    }
  });

  it('never guesses a diet, in any file', () => {
    for (const [, file] of FILES) expect(dataOf(file).json).not.toContain('suitableForDiet');
  });

  it('leaves out what is open or at least, and names it', () => {
    const { fibre: _, ...without } = panel;
    const file = tray({}, without);
    expect(valuesOf(file, 'NutritionInformation')).not.toHaveProperty('fiberContent');
    expect(valuesOf(file, 'NutritionInformation')).toHaveProperty('fatContent', '9 g');
    const fibre = dataOf(file).left.find(({ what }) => what === 'fibre');
    expect(fibre).toMatchObject({ segmentId: 'tray', dish: 'Oat tray' });
    expect(fibre?.why).toContain('no value for 400 g oat batter');
  });

  it('has no nutrition at all of a dish whose every number is open', () => {
    const file = tray({ recipe: aRecipe('r', [grams('oats', 'nobody', 400)]) });
    const { left } = dataOf(file);
    expect(ofType(file, 'NutritionInformation')).toEqual([]);
    const named = left.filter(({ segmentId }) => segmentId === 'tray').map(({ what }) => what);
    expect(named).toEqual(expect.arrayContaining(['calories', 'protein', 'portions', 'method']));
  });

  it('leaves out a number that rests on a food which nobody has confirmed', () => {
    const lines = [grams('oats', 'oats', 400, { match: 'provisional' })];
    expect(ofType(tray({ recipe: aRecipe('r', lines) }), 'NutritionInformation')).toEqual([]);
  });

  it('names a dish that came after the numbers were locked', () => {
    const file = tray();
    const snapshot = takeLock(file).snapshot;
    const fresh = aDish('new', aRecipe('n', [grams('oats', 'oats', 100)]), { title: 'New pot' });
    const { episode } = file;
    const later = { ...file, episode: { ...episode, segments: [...episode.segments, fresh] } };
    const { left, json } = structuredData(numbersToPublish(later, snapshot));
    expect(json).not.toContain('New pot');
    expect(json).toContain('"calories": "240 calories"');
    expect(left.find(({ dish }) => dish === 'New pot')?.why).toContain('lock them again');
  });

  it.each([
    ['2026-03-07', 'planned for 2026-03-07; the place it is published at knows it: add it there'],
    [null, 'the place it is published at knows it: add it there'],
  ])('takes no plan for the day on which it went out: %s', (publishOn, why) => {
    const { episode, ...rest } = tray();
    const data = dataOf({ ...rest, episode: { ...episode, publishOn } });
    expect(data.json).not.toMatch(/datePublished|uploadDate/);
    expect(data.left).toContainEqual({
      ...{ segmentId: null, dish: 'The video', what: 'day of publishing', why },
    });
  });

  it('gives no clips of chapters in no order', () => {
    const later = tray();
    const segments = later.episode.segments.toReversed();
    const data = dataOf({ ...later, episode: { ...later.episode, segments } });
    expect(data.json).not.toContain('hasPart');
    expect(data.left.map(({ why }) => why).join('\n')).toContain('does not come after');
  });

  it('tells that the European panel’s salt has no property', () => {
    const file = tray();
    const eu = { ...file, episode: { ...file.episode, region: 'EU' as const } };
    const salt = dataOf(eu).left.find(({ what }) => what === 'salt');
    expect(salt?.why).toBe('the vocabulary has no property for it');
  });

  it('cannot end its element or open a comment within it, and means the same', () => {
    // HTML Living Standard, 4.12.1.3: “<!--”, “<script” and “</script” may not stand in it.
    const title = '</script><script>alert(1)</script><!-- <SCRIPT';
    const file = tray({ title });
    const { script, json } = dataOf({ ...file, episode: { ...file.episode, title } });
    const inner = script.replace(/^<script type="application\/ld\+json">\n|\n<\/script>\n$/g, '');
    expect(inner).not.toContain('<');
    expect(JSON.parse(inner)).toEqual(JSON.parse(json));
    expect(valuesOf(file, 'Recipe')).toHaveProperty('name', title);
    expect(JSON.parse(jsonLd({ '<': '\u2028<' }))).toEqual({ '<': '\u2028<' });
  });

  it('counts sodium and cholesterol in milligrams, all others in grams', () => {
    // schema.org 30.0: “The number of milligrams of sodium.”, “The number of grams of fat.” and so on.
    const nutrition = valuesOf(tray(), 'NutritionInformation');
    const units: Partial<Record<keyof NutritionInformation, string>> = {
      sodiumContent: 'mg',
      cholesterolContent: 'mg',
      fatContent: 'g',
      proteinContent: 'g',
    };
    for (const [name, unit] of Object.entries(units))
      expect(String(nutrition[name]).split(' ')[1]).toBe(unit);
  });
});
