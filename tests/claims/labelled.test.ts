import { describe, expect, test } from 'vitest';
import { labelled, labelledFiles, places, statementSchema } from './labelled';

const SAID = {
  kind: 'nutrient',
  nutrient: 'protein',
  low: 52,
  high: 52,
  unit: 'g',
  hedge: 'none',
  scope: 'dish',
  words: '52 grams of protein',
  tags: ['digits'],
};

describe.each(labelledFiles())('%s', (name) => {
  const { texts } = labelled(name);

  test('no id and no text stands twice', () => {
    expect(new Set(texts.map(({ id }) => id)).size).toBe(texts.length);
    expect(new Set(texts.map(({ text }) => text)).size).toBe(texts.length);
  });

  test('the quoted words occur in the text, in the order of the statements', () => {
    const missing = texts.flatMap((text) =>
      places(text).flatMap((place, at) =>
        place ? [] : [`${text.id}: ${text.statements[at]?.words ?? ''}`],
      ),
    );
    expect(missing).toEqual([]);
  });

  test('the dish that is talked about, and that of a statement, is one of the dishes', () => {
    const strangers = texts.flatMap(({ id, context, statements }) =>
      [context?.dish, ...statements.map(({ dish }) => dish)].filter(
        (dish) => dish !== undefined && !context?.dishes?.includes(dish) && `${id}: ${dish}`,
      ),
    );
    expect(strangers).toEqual([]);
  });

  test('food that is named and not counted is labelled only where ingredients are known', () => {
    const unfounded = texts.filter(
      ({ context, statements }) =>
        !context?.ingredients && statements.some(({ kind }) => kind === 'foodNamed'),
    );
    expect(unfounded.map(({ id }) => id)).toEqual([]);
  });
});

test('words that stand twice are found one after the other', () => {
  const statements = [{ words: '2 eggs' }, { words: '2 eggs' }, { words: 'eggs, 2' }];
  expect(places({ text: '2 eggs, 2 eggs', statements })).toEqual([
    { start: 0, end: 6 },
    { start: 8, end: 14 },
    null,
  ]);
});

test.each([
  ['a range without its hedge', { ...SAID, high: 54, tags: ['digits', 'range'] }],
  ['a hedge without its tag', { ...SAID, hedge: 'about' }],
  ['a part of the dish without its tag', { ...SAID, scope: 'portion' }],
  ['a comparison that does not say how', { ...SAID, scope: 'compared', tags: ['digits', 'scope'] }],
  ['a number that is neither digits nor words nor a fraction', { ...SAID, tags: [] }],
  ['a nutrient that nobody knows', { ...SAID, nutrient: 'goodness' }],
  ['low above high', { ...SAID, low: 53, hedge: 'between', tags: ['digits', 'range'] }],
  ['an amount in a unit that is none', { ...SAID, kind: 'amount', nutrient: undefined, unit: 'x' }],
])('%s is refused', (_, statement) => {
  expect(statementSchema.safeParse(SAID).success).toBe(true);
  expect(statementSchema.safeParse(statement).success).toBe(false);
});
