import fc from 'fast-check';
import type { Recipe, WithContext } from 'schema-dts';
import { describe, expect, it } from 'vitest';
import { NO_FACTS } from '#lib/claims/edit-facts';
import { readEdit } from '#lib/claims/read-edit';
import { nothingYet, offerOf } from '#lib/draft/offer';
import { readJson, type JsonNode } from '#lib/draft/recipe-data/json-places';
import {
  MOST_RECIPE_DATA,
  readRecipeData,
  type RecipesRead,
} from '#lib/draft/recipe-data/read-recipe-data';
import { episodeFigures } from '#lib/figures/episode-figures';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { structuredData } from '#lib/publish/structured/structured-data';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

// Written against the declarations of schema-dts 2.1.0: an example of ours in the vocabulary's own form.
const RECIPE: WithContext<Recipe> = {
  '@context': 'https://schema.org',
  '@type': 'Recipe',
  name: 'Oat &amp; skyr tray',
  recipeYield: '4 servings',
  prepTime: 'PT15M',
  totalTime: 'PT1H30M',
  recipeIngredient: ['80 g rolled oats', '1&frac12; cups skyr', '<b>2</b> eggs'],
  recipeInstructions: [
    {
      '@type': 'HowToSection',
      name: 'The batter',
      itemListElement: [
        { '@type': 'HowToStep', text: 'Stir everything.' },
        { '@type': 'HowToStep', name: 'Rest it for 10 minutes.' },
      ],
    },
    { '@type': 'HowToStep', text: 'Bake for 20 minutes at 180 °C.' },
  ],
  suitableForDiet: 'https://schema.org/GlutenFreeDiet',
  nutrition: {
    '@type': 'NutritionInformation',
    calories: '240 calories',
    fatContent: '9 grams fat',
    sodiumContent: '150 mg',
    proteinContent: 'plenty',
  },
};
const TEXT = JSON.stringify(RECIPE, null, 1);

function read(pasted: string): RecipesRead {
  const result = readRecipeData(pasted);
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join('; '));
  return result.value;
}
const faultOf = (pasted: string): string => {
  const result = readRecipeData(pasted);
  return result.ok ? 'read' : (result.problems[0]?.message ?? '');
};
const dish = (more: object) => {
  const { draft } = read(JSON.stringify({ '@type': 'Recipe', name: 'Pot', ...more }));
  const [segment] = draft.segments;
  if (!segment) throw new Error('no dish');
  return { ...segment, left: draft.left };
};
const words = (some: readonly { readonly text: string }[]) => some.map(({ text }) => text);

describe('a recipe as data, read', () => {
  it('is a dish with its ingredients, portions and method, each with its line', () => {
    const { draft } = read(TEXT);
    const [segment] = draft.segments;
    expect(segment?.title).toBe('Oat & skyr tray');
    expect(words(segment?.lines ?? [])).toEqual(['80 g rolled oats', '1½ cups skyr', '2 eggs']);
    expect(segment?.portions?.count).toBe(4);
    expect(words(segment?.method ?? [])).toEqual([
      'The batter:',
      'Stir everything.',
      'Rest it for 10 minutes.',
      'Bake for 20 minutes at 180 °C.',
    ]);
    const lines = TEXT.split('\n');
    for (const { text, from } of segment?.lines ?? []) {
      expect(from.text).toBe('recipeData');
      expect(lines[from.line - 1]).toContain(text.slice(-4));
    }
  });

  it('names what is left out: diets never, times of no step, amounts that are none', () => {
    const left = read(TEXT).draft.left.map(({ from, message }) => `${from.words}: ${message}`);
    expect(left.join('\n')).toMatch(/GlutenFreeDiet: Whether a dish suits a diet is never/);
    expect(left.join('\n')).toMatch(/PT15M: prepTime is of no one step/);
    expect(left.join('\n')).toMatch(/plenty: proteinContent is no amount/);
    expect(left).toHaveLength(3);
  });

  it('makes its numbers a text to be judged, and no fact', () => {
    const [claim] = read(TEXT).claims;
    expect(claim?.text).toBe(
      'Oat & skyr tray\nPer portion: 240 calories, 9 g fat, 150 mg sodium.\nReady in 90 minutes.',
    );
    // A tray of 1200 kcal in four: 300 each, and 9 g of fat. The first is off, the second agrees.
    const file = aFile(
      [
        aDish(
          'tray',
          aRecipe('r', [grams('oats', 'oats', 400)], {
            portions: [{ id: 'p', kind: 'count', name: 'a quarter', of: 4 }],
          }),
          { title: 'Oat & skyr tray' },
        ),
      ],
      [aFood('oats', { energyKcal: '300', fat: '9.0', sodium: '150' })],
    );
    const text = { id: 't', kind: 'card' as const, name: 'data', text: claim?.text ?? '' };
    const { judged } = readEdit(
      { ...file, edit: { texts: [text], mends: [], named: [] } },
      NO_FACTS,
    );
    const verdicts = judged.map(({ statement, verdict }) => `${statement.words}: ${verdict}`);
    expect(verdicts).toEqual(
      expect.arrayContaining(['240 calories: off', '9 g fat: agrees', '150 mg sodium: agrees']),
    );
    // Nothing was logged, so nobody knows how long it took.
    expect(verdicts.find((each) => each.includes('90 minutes'))).toMatch(/: unknown$/);
  });

  it('offers what an episode lacks, as a draft of texts does', () => {
    const offer = offerOf(read(TEXT).draft, nothingYet('EU'));
    const [segment] = offer.segments;
    expect(segment?.into).toBeNull();
    expect(segment?.parts.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['line', 'portions', 'method', 'step']),
    );
  });

  it('is read out of a page, a graph, a list, and within other things; the same one once', () => {
    const script = (data: unknown) =>
      `<script id=a type='application/ld+json'>\n${JSON.stringify(data)}\n</script>`;
    const page = [
      '<!doctype html><html><head><script>var a = {"@type": "Recipe"};</script>',
      script({ '@graph': [{ '@type': 'WebPage', mainEntity: RECIPE }] }),
      script([RECIPE, { ...RECIPE, '@type': ['Recipe', 'NewsArticle'], name: 'Second' }]),
      script({ '@type': 'http://schema.org/Recipe', name: 'Third', recipeIngredient: '1 egg' }),
      '</head></html>',
    ].join('\n');
    const { draft } = read(page);
    expect(draft.segments.map(({ title }) => title)).toEqual([
      'Oat & skyr tray',
      'Second',
      'Third',
    ]);
    expect(draft.left.filter(({ message }) => message === 'The same recipe again.')).toHaveLength(
      1,
    );
  });

  it('reads what this program writes', () => {
    const file = aFile(
      [
        aDish(
          'pots',
          aRecipe('r', [grams('200 g skyr', 'skyr', 200)], {
            portions: [{ id: 'p', kind: 'count', name: 'each', of: 2 }],
            method: 'Stir.\nChill.',
          }),
          { title: 'Pots </script>' },
        ),
      ],
      [aFood('skyr', { energyKcal: '60', protein: '11.0', fat: '0.2' })],
    );
    const figures = episodeFigures(file);
    const numbers = publishedNumbers(file, figures);
    const { script } = structuredData({ file, figures, numbers });
    const { draft, claims } = read(`<html>${script}</html>`);
    expect(draft.segments).toHaveLength(1);
    expect(words(draft.segments[0]?.method ?? [])).toEqual(['Stir.', 'Chill.']);
    expect(draft.segments[0]?.portions?.count).toBe(2);
    expect(words(draft.segments[0]?.lines ?? [])[0]).toContain('200 g skyr');
    expect(claims[0]?.text).toContain('60 calories, 11 g protein, 0 g fat');
  });

  it.each([
    ['4', 4],
    [4, 4],
    ['Serves 6', 6],
    ['Makes 12 bars', 12],
    ['12 cookies', 12],
    [['4', '4 servings'], 4],
    [{ '@type': 'QuantitativeValue', value: 8, unitText: 'pieces' }, 8],
    ['4-6 servings', null],
    ['a lot', null],
    [0, null],
    [{ nothing: 1 }, null],
  ])('portions of %j are %j', (recipeYield, count) => {
    const { portions, left } = dish({ recipeYield });
    expect(portions?.count ?? null).toBe(count);
    expect(left.some(({ why }) => why === 'portions')).toBe(count === null);
  });

  it.each([
    ['Stir.\nBake.', ['Stir.', 'Bake.']],
    ['<p>Stir.</p><p>Bake.</p>', ['Stir.', 'Bake.']],
    [
      ['Stir.', 'Bake.'],
      ['Stir.', 'Bake.'],
    ],
    [
      {
        '@type': 'ItemList',
        itemListElement: ['Stir.', { '@type': 'ListItem', item: { name: 'Bake.' } }],
      },
      ['Stir.', 'Bake.'],
    ],
    [
      { '@type': 'HowToStep', itemListElement: [{ '@type': 'HowToDirection', text: 'Stir.' }] },
      ['Stir.'],
    ],
  ])('a method of %j', (recipeInstructions, steps) => {
    expect(words(dish({ recipeInstructions }).method)).toEqual(steps);
  });

  it.each([
    [{ recipeIngredient: '1 egg\n2 plums' }, ['1 egg', '2 plums']],
    [{ ingredients: ['1 egg'] }, ['1 egg']],
    [
      { recipeIngredient: [{ '@type': 'PropertyValue', name: 'oats', value: 80, unitText: 'g' }] },
      ['80 g oats'],
    ],
    [
      {
        recipeIngredient: [
          {
            '@type': 'HowToSupply',
            name: 'skyr',
            requiredQuantity: { '@type': 'QuantitativeValue', value: '200', unitText: 'g' },
          },
        ],
      },
      ['200 g skyr'],
    ],
  ])('ingredients of %j', (more, lines) => {
    expect(words(dish(more).lines)).toEqual(lines);
  });

  it('leaves out what has the wrong type, by its line', () => {
    const { lines, method, left } = dish({
      recipeIngredient: [true, {}, '1 egg', null],
      recipeInstructions: [{ '@type': 'HowToStep', image: 'x' }],
      nutrition: 'none',
      totalTime: 'P45M',
    });
    expect(words(lines)).toEqual(['1 egg']);
    expect(method).toEqual([]);
    const messages = left.map(({ message }) => message).join('\n');
    expect(messages).toMatch(/No words of an ingredient.*\n.*No words of an ingredient/);
    expect(messages).toContain('No words of a step');
    expect(messages).toContain('45 minutes are “PT45M”');
    expect(messages).toContain('Nutrition is an object');
    expect(dish({ name: 7 }).title).toBe('7');
    expect(dish({ name: { a: 1 } }).title).toBe('Recipe without a name');
  });

  it('says by line and column where the data breaks', () => {
    expect(faultOf('{\n  "@type": "Recipe",\n  "name": "Pot"\n  "x": 1\n}')).toBe(
      'The data cannot be read from line 4, column 3 on: a comma or the end of the object, “}”, is expected, and there is “"”.',
    );
    expect(faultOf('<script type="application/ld+json">\n{"a": }</script>')).toContain(
      'line 2, column 7 on: a value is expected, and there is “}”',
    );
    expect(faultOf('{"a": "b')).toContain('the text in quotes does not end');
  });

  it('reads the other scripts of a page where one is broken, and names it', () => {
    const { draft } = read(
      `<script type="application/ld+json">{,}</script>\n<script type="application/ld+json">${TEXT}</script>`,
    );
    expect(draft.segments).toHaveLength(1);
    expect(draft.left[0]?.message).toContain('line 1, column 37');
  });

  it('refuses in words what has no recipe, is too long or too deep', () => {
    expect(faultOf('Oats and an egg')).toContain('There is no recipe data in it');
    expect(faultOf('')).toContain('There is no recipe data in it');
    expect(faultOf('{"@type": "Person"}')).toContain('says of nothing that it is a Recipe');
    expect(faultOf('x'.repeat(MOST_RECIPE_DATA + 1))).toContain('Up to 5,000,000 characters');
    expect(faultOf('['.repeat(100_000))).toContain('nested deeper than 64 times');
    expect(faultOf(`${'{"a":'.repeat(100_000)}`)).toContain('nested deeper');
  });

  it('reads five megabytes in time that grows with them and no faster', () => {
    const lines = Array.from(
      { length: 100_000 },
      (_, at) => `${at + 1} g oats of kind ${at}, <b>raw`,
    );
    const text = JSON.stringify({ '@type': 'Recipe', name: 'Long', recipeIngredient: lines });
    expect(text.length).toBeGreaterThan(3_000_000);
    const { draft } = read(text.padEnd(MOST_RECIPE_DATA));
    expect(draft.segments[0]?.lines).toHaveLength(400);
    expect(draft.left.filter(({ why }) => why === 'full').length).toBe(lines.length - 400);
  });

  it('never throws, whatever is pasted', () => {
    const value = fc.letrec<{ any: unknown }>((tie) => ({
      any: fc.oneof(
        { maxDepth: 5 },
        fc.constantFrom<unknown>('Recipe', 'PT5M', 4, null, true, '4 servings', '<br>', -1),
        fc.array(tie('any'), { maxLength: 4 }),
        fc.dictionary(
          fc.constantFrom(
            '@type',
            'name',
            'recipeIngredient',
            'recipeInstructions',
            'recipeYield',
            'nutrition',
            'calories',
            'totalTime',
            'itemListElement',
            '@graph',
            'value',
            'text',
          ),
          tie('any'),
          { maxKeys: 6 },
        ),
      ),
    })).any;
    fc.assert(
      fc.property(value, (data) => {
        const result = readRecipeData(
          JSON.stringify({ '@graph': [data, { '@type': 'Recipe', data }] }),
        );
        expect(result.ok).toBe(true);
      }),
      { numRuns: 300 },
    );
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(() => readRecipeData(`{${text}`)).not.toThrow();
      }),
    );
  });
});

/** The value that a node says, as `JSON.parse` has it. */
function valueOf(node: JsonNode): unknown {
  if (node.kind === 'list') return node.items.map(valueOf);
  if (node.kind !== 'object') return node.value;
  return Object.fromEntries([...node.entries].map(([name, each]) => [name, valueOf(each)]));
}

describe('JSON with places', () => {
  const parsed = (text: string): { readonly value: unknown } | null => {
    try {
      return { value: JSON.parse(text) };
    } catch {
      return null;
    }
  };

  it('takes what JSON.parse takes, with the same values', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 6 }), (text) => {
        const read = readJson(text);
        expect(read.ok && valueOf(read.value)).toEqual(JSON.parse(text));
      }),
    );
  });

  it('takes and refuses what JSON.parse does, one sign changed', () => {
    const sign = fc.constantFrom(...'{}[],:"\\ tn01.-+eE/u\n\t\u0001é'.split(''));
    fc.assert(
      fc.property(fc.json({ maxDepth: 3 }), fc.nat(), sign, (json, where, put) => {
        const at = where % (json.length + 1);
        const text = json.slice(0, at) + put + json.slice(at + 1);
        const read = readJson(text);
        const of = parsed(text);
        expect(read.ok).toBe(of !== null);
        if (read.ok && of) expect(valueOf(read.value)).toEqual(of.value);
      }),
      { numRuns: 2000 },
    );
  });

  // Cases by the rules of RFC 8259: no trailing commas, leading zeros, single quotes, comments or bare signs.
  it.each([
    '[1,]',
    '{"a":1,}',
    '[01]',
    "['a']",
    '[1] // a',
    '[+1]',
    '[.5]',
    '[1.]',
    '["\\x41"]',
    '["\t"]',
    '[NaN]',
    '',
    '{"a"}',
    '"\\u12"',
  ])('refuses %j', (text) => {
    expect(readJson(text).ok).toBe(false);
  });
});
