import { describe, expect, test } from 'vitest';
import { readDraft } from '#lib/draft/read-draft';
import { withoutAsides } from '#lib/draft/title-asides';
import { sketch } from './sketch';

// Common practice of descriptions, no source; all invented.
const sketched = (description: string, title = '') => {
  const read = readDraft({ description, title });
  return read.ok ? sketch(read.value) : [JSON.stringify(read.problems)];
};
/** Names of the dishes with their portions and the number of their ingredients. */
const dishes = (description: string, title = '') => {
  const read = readDraft({ description, title });
  if (!read.ok) throw new Error('refused');
  return read.value.segments.map(
    (segment) => `${segment.title} ×${segment.portions?.count ?? '?'}: ${segment.lines.length}`,
  );
};
const rest = '\n150 g barley\n1 leek';

describe('what stands beside a title', () => {
  test.each([
    ['Leek salad (4 tubs)', 'Leek salad', 4, ['vessels']],
    ['Plum slices — 12 squares', 'Plum slices', 12, ['vessels']],
    ['Barley broth | 6 servings', 'Barley broth', 6, ['portions']],
    ['Seeded flatbread (1 large one)', 'Seeded flatbread', 1, ['portions']],
    ['Lunch dumplings (24 dumplings)', 'Lunch dumplings', 24, ['vessels']],
    ['Mint dip (300 g)', 'Mint dip', 'unclear', ['amount']],
    ['Rye pancakes – makes 6 (410 kcal, 22g P)', 'Rye pancakes', 6, ['numbers', 'portions']],
    ['Plum pot: 310 kcal', 'Plum pot', null, ['numbers']],
    ['Barley cups (2 jars, 390 kcal each)', 'Barley cups', 2, ['vessels', 'numbers']],
    ['Pea stew (3-4 bowls)', 'Pea stew', 'unclear', ['portions']],
    ['Rye bread (2 loaves)', 'Rye bread', 'unclear', ['vessels']],
  ])('%s', (title, text, portions, asides) =>
    expect(withoutAsides(title)).toEqual({ text, portions, asides }),
  );

  test.each(['Noodles (two ways)', 'Stew (40 min)', 'Flatbread (24 cm)', 'Pie (veggie)'])(
    'is no number of it: %s',
    (title) => expect(withoutAsides(title)).toMatchObject({ text: title, asides: [] }),
  );
});

describe('a heading with something beside it', () => {
  test.each([
    ['LEEK TART (2 big ones)', 'LEEK TART ×2: 2'],
    ['PLUM SLICES — 12 squares', 'PLUM SLICES ×12: 2'],
    ['Leek soup (3 tubs)', 'Leek soup ×3: 2'],
    ['Barley broth | 6 servings', 'Barley broth ×6: 2'],
    ['2. Noodle jars (4 jars)', 'Noodle jars ×4: 2'],
    ['**Noodle jars (4 jars)**', 'Noodle jars ×4: 2'],
    ['🥕 Noodle trays — makes 2 (410 kcal, 22g P)', 'Noodle trays ×2: 2'],
    ['🍐 Snack (80 kcal)', 'Snack ×?: 2'],
    ['Pear snack: 80 kcal', 'Pear snack ×?: 2'],
  ])('%s', (heading, comes) =>
    expect(dishes(`Carrots and eggs\n200 g carrots\n2 eggs\n\n${heading}${rest}`)).toEqual([
      'Carrots and eggs ×?: 2',
      comes,
    ]),
  );

  test('is one where a chapter is called so, or another line is like it', () => {
    const chapters = '0:00 Hi\n0:10 Bean rolls\n1:00 Red dip\n\n';
    const lists =
      'Bean rolls (serves 2)\n100 g beans\n2 rolls\n\nRed dip (8 tbsp)\n1 pepper\n1 lime';
    expect(dishes(chapters + lists)).toEqual(['Hi ×?: 0', 'Bean rolls ×2: 2', 'Red dip ×?: 2']);
    expect(dishes(`Tofu rice (4 boxes)${rest}\n\nSour noodles (3 jars)${rest}`)).toEqual([
      'Tofu rice ×4: 2',
      'Sour noodles ×3: 2',
    ]);
  });

  test('is an ingredient where the list is written so, or its label stands above', () => {
    expect(dishes('Rice pot\nRice — 300 g\nEggs — 2 pieces\n\nSalad\nLeeks — 3 pieces')).toEqual([
      'Rice pot ×?: 2',
      'Salad ×?: 1',
    ]);
    expect(dishes('Ingredients:\n\nButter (20 g)\n2 eggs')).toEqual([
      'A dish without a name ×?: 2',
    ]);
    expect(dishes('Tray (serves 4)\n8 carrots\n\nYogurt (200 g)\n1 clove garlic')).toEqual([
      'Tray ×4: 3',
    ]);
    expect(sketched('Breakfast\nOats (230 kcal)\nPear (80 kcal)\n200 ml milk (90 kcal)')).toEqual([
      '- dish Breakfast',
      '  200 ml milk',
      'left description 2 numbers',
      'left description 3 numbers',
    ]);
  });

  test('of a meal is one without a blank line above it', () => {
    expect(
      dishes('Breakfast (400 kcal)\n60 g oats\n1 pear\nLunch (600 kcal)\n150 g tofu\nKeeps 2 days'),
    ).toEqual(['Breakfast ×?: 2', 'Lunch ×?: 1']);
  });

  test('is left out with its line where it could be either', () => {
    expect(sketched('Stew\n1 leek\n200 g carrots\n\nChicken thighs — 4 pieces\n1 onion')).toEqual([
      '- dish Stew',
      '  1 leek',
      '  200 g carrots',
      '  1 onion',
      'left description 5 unclear',
    ]);
  });
});

describe('a sauce and the like', () => {
  const wraps = 'Bean wraps (makes 6)\n300 g beans\n6 tortillas\n\n';
  test('with portions of its own is a dish', () => {
    for (const heading of ['Red sauce (serves 10)', 'Lime dressing (makes 4)'])
      expect(dishes(`${wraps}${heading}\n1 pepper`)).toEqual([
        'Bean wraps ×6: 2',
        `${heading.replace(/ \(.*/, '')} ×${/\d+/.exec(heading)?.[0] ?? ''}: 1`,
      ]);
  });

  test('without them stays with the dish above, and is told', () => {
    const plain = 'Wraps:\n300 g beans\n6 tortillas\n\nRed sauce:\n1 pepper';
    expect(sketched(plain, 'Freezer wraps for a week')).toEqual([
      'title Freezer wraps for a week',
      '- dish Wraps',
      '  300 g beans',
      '  6 tortillas',
      '  1 pepper',
      'left description 5 unclear',
    ]);
  });

  test('among plain parts, or as part, is none', () => {
    expect(
      sketched('Wraps:\n300 g beans\n\nRed sauce:\n1 pepper\n\nFor the topping:\n30 g feta').at(-1),
    ).toBe('  30 g feta');
    expect(sketched('Wraps (serves 2)\n300 g beans\n\nFor the sauce:\n1 pepper').at(-1)).toBe(
      '  1 pepper',
    );
  });
});
