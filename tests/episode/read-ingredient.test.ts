import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readIngredient, readIngredientList } from '#lib/episode/read-ingredient';
import type { ReadIngredient } from '#lib/episode/read-ingredient-types';
import { quantityText } from '#lib/units/read-quantity';

// Common practice of written recipes; there is no standard for ingredients as text.

/** A part in one line: amount unit/measure (grams) food, state; note. */
function inBrief(part: ReadIngredient): string {
  const { quantity, unit, measure, grams, food, state, note } = part;
  const amount = quantity ? quantityText(quantity) : 'open';
  const counted = measure === null ? (unit ?? '–') : `${unit}/${measure}`;
  const low = (grams?.lowMg ?? 0) / 1000;
  const high = (grams?.highMg ?? 0) / 1000;
  const stated = grams ? ` =${low === high ? low : `${low}–${high}`}g` : '';
  return [`${amount} ${counted}${stated} | ${food}`, state, note].filter(Boolean).join(' | ');
}

function brief(text: string): string {
  return readIngredient(text).map(inBrief).join(' + ');
}

const codes = (text: string) => readIngredient(text).flatMap((p) => p.remarks.map((r) => r.code));

const READ: [string, string][] = [
  ['180 g egg whites', '180 g | egg whites'],
  ['3 slices rye crispbread', '3 piece/slice | rye crispbread'],
  ['1 1/2 cups shredded cheddar', '1 1/2 cup | cheddar | shredded'],
  ['½ large aubergine', '1/2 piece/large | aubergine'],
  ['a handful of rocket (20 g)', '1 piece/handful =20g | rocket'],
  ['14–16 oz ground turkey', '14–16 oz | ground turkey'],
  ['2 x 400 g tins butter beans, drained', '2 pack/tin | butter beans | drained'],
  ['1 lb 2 oz skirt', '18 oz | skirt'],
  ['3 tbsp skyr', '3 tbsp | skyr'],
  ['a third of a serving of salsa', '1/3 serving | salsa'],
  ['salt to taste', 'open – | salt | to taste'],
  ['juice of 1 lemon', '1 piece/lemon | lemon juice'],
  ['1 egg + 2 whites', '1 piece | egg + 2 piece | egg whites'],
  ['2 tbsp + 1 tsp oil', '7 tsp | oil'],
  ['zest of 2 limes', '2 piece/lime | lime zest'],
  ['1,5 kg potatoes', '1 1/2 kg | potatoes'],
  ['1,500 g potatoes', 'open g | potatoes'],
  ['2 glugs of oil', '2 piece/glug | oil'],
  ['1 knob butter', '1 piece/knob | butter'],
  ['200 g (7 oz) feta', '200 g | feta'],
  ['1 cup (240 ml) milk', '1 cup | milk | 240 ml'],
  ['1 cup (150 g) blueberries', '1 cup =150g | blueberries'],
  ['400 g tin of chickpeas', '1 pack/tin =400g | chickpeas'],
  ['3 slices (75–80 g) ham', '3 piece/slice =75–80g | ham'],
  ['a couple of eggs', 'open – | eggs'],
  ['a few sprigs of thyme', 'open piece/sprig | thyme'],
  ['- [ ] 2 eggs', '2 piece | eggs'],
  ['1) 200g flour', '200 g | flour'],
  ['2 garlic cloves, finely chopped', '2 piece/clove | garlic | finely chopped'],
  ['4 boneless, skinless chicken thighs', '4 piece | boneless skinless chicken thighs'],
  ['1 (400 g) tin chopped tomatoes', '1 pack/tin =400g | tomatoes | chopped'],
  ['2 (150 g) salmon fillets', '2 piece/fillet =300g | salmon'],
  ['2 x 150 g salmon fillets', '2 piece/fillet =300g | salmon'],
  ['1 14-oz can coconut milk', '1 pack/can | coconut milk'],
  ['Chicken breast 200 g, diced', '200 g | Chicken breast | diced'],
  ['Rocket: a handful', '1 piece/handful | Rocket'],
  ['Eggs x 2', '2 piece | Eggs'],
  ['Feta (50 g)', '50 g | Feta'],
  ['Optional: 1 tbsp honey', '1 tbsp | honey | Optional'],
  ['1 cup cooked brown rice', '1 cup | brown rice | cooked'],
  ['80 g dried red lentils', '80 g | red lentils | dry'],
  ['1 tsp dried oregano', '1 tsp | dried oregano'],
  ['200g/7oz halloumi, sliced', '200 g | halloumi | sliced'],
  ['1-1/2 cups oats', '1 1/2 cup | oats'],
  ['1 and 1/2 cups milk', '1 1/2 cup | milk'],
  ['two thirds of a cup of quinoa, uncooked', '2/3 cup | quinoa | raw'],
  ['half a red onion, thinly sliced', '1/2 piece | red onion | thinly sliced'],
  ['1 small bunch flat-leaf parsley', '1 piece/bunch | flat-leaf parsley | small'],
  ['3 large egg whites', '3 piece/large | egg whites'],
  ['2 eggs, large', '2 piece/large | eggs'],
  ['1 heaped tbsp peanut butter', '1 tbsp | peanut butter | heaped'],
  ['1 tin chickpeas (400 g, 240 g drained)', '1 pack/tin =240g | chickpeas | drained'],
  ['~40 g walnuts', '40 g =38–42g | walnuts'],
  ['2 trout (~150 g each)', '2 piece =285–315g | trout'],
  ['3 g yeast or so', '3 g | yeast | or so'],
  ['about 300 g asparagus', '300 g =285–315g | asparagus | about'],
  ['up to 3 tbsp water', 'open tbsp | water'],
  ['freshly ground black pepper', 'open – | black pepper | freshly ground'],
  ['1 tsp freshly ground black pepper', '1 tsp | black pepper | freshly ground'],
  ['2 tbsp olive oil, for frying', '2 tbsp | olive oil | for frying'],
  ['2 tbsp olive oil plus extra for drizzling', '2 tbsp | olive oil | plus extra for drizzling'],
  ['200 g butter plus 1 tbsp for greasing', '200 g | butter + 1 tbsp | butter | for greasing'],
  ['half a dozen eggs', '6 piece | eggs'],
  ['1 cup 2% milk', '1 cup | 2% milk'],
  ['5% fat Greek yoghurt 170 g', '170 g | 5% fat Greek yoghurt'],
  ['1 lb 93/7 ground turkey', '1 lb | 93/7 ground turkey'],
  ['2 7-inch tortillas', '2 piece | tortillas | 7-inch'],
  ['a 2-inch piece of ginger, grated', '1 piece/piece | ginger | 2-inch, grated'],
  ['2 cm piece of ginger', 'open – | piece of ginger | 2 cm'],
  ['1 onion finely chopped', '1 piece | onion | finely chopped'],
  [
    '1 tin tuna in brine, drained (112 g drained weight)',
    '1 pack/tin =112g | tuna in brine | drained',
  ],
  // The weight in front is called the drained one (common practice of labels, no source).
  ['120g can mackerel in brine (drained weight)', '1 pack/can =120g | mackerel in brine | drained'],
  ['2 x 85 g tins sardines, net drained weight', '2 pack/tin =170g | sardines | drained'],
  ['1 tin lentils (250 g), drained weight', '1 pack/tin =250g | lentils | drained'],
  ['2 tins (400 g each) tomatoes', '2 pack/tin =800g | tomatoes'],
  ['2 tins (400 g) tomatoes', '2 pack/tin | tomatoes'],
  ['1/3 of a 400 g tin of kidney beans', '1/3 pack/tin =133.333g | kidney beans'],
  ['4 salmon fillets, 120 g each', '4 piece/fillet =480g | salmon'],
  ['salt and pepper', 'open – | salt + open – | pepper'],
  ['dill, salt + pepper', 'open – | dill + open – | salt + open – | pepper'],
  ['salt and vinegar crisps', 'open – | salt and vinegar crisps'],
  ['salt & pepper cashews', 'open – | salt & pepper cashews'],
  ['Salt', 'open – | Salt'],
  ['a pinch of salt', '1 piece/pinch | salt'],
  ['pinch of salt', 'open piece/pinch | salt'],
  ['handful spinach', 'open piece/handful | spinach'],
  ['1 pound cake', '1 piece | pound cake'],
  ['1 hard-boiled egg', '1 piece | egg | cooked | hard-boiled'],
  ['2 slices roasted turkey', '2 piece/slice | turkey | cooked | roasted'],
  ['100 g roast chicken', '100 g | chicken | cooked | roast'],
  ['1 rib eye steak', '1 piece | rib eye steak'],
  ['2 bay leaves', '2 piece | bay leaves'],
  ['6 basil leaves', '6 piece/leaf | basil'],
  ['1 cinnamon stick', '1 piece | cinnamon stick'],
  ['½ tsp each cumin and paprika', 'open tsp | cumin and paprika'],
  ['2 fl oz cream', '2 flOz | cream'],
  ['1 T sugar', 'open – | sugar | 1 T'],
  ['3 rashers streaky bacon', '3 piece/rasher | streaky bacon'],
  ['1 tablespon honey', '1 tbsp | honey'],
  ['250 ml semi-skimmed milk', '250 ml | semi-skimmed milk'],
  ['2-3 tbsp water', '2–3 tbsp | water'],
  ['1 to 2 cups stock', '1–2 cup | stock'],
  ['200 g - 250 g mince', '200–250 g | mince'],
  ['1 cup or 150 g berries', 'open cup | berries'],
  ['3-2 eggs', 'open piece | eggs'],
  ['2 tbsp (30 g) tahini', '2 tbsp =30g | tahini'],
  [
    '1 x 400g tin black beans, drained and rinsed',
    '1 pack/tin | black beans | drained | drained and rinsed',
  ],
  ['75 g pasta (dry weight)', '75 g | pasta | dry'],
  ['1 baked potato', '1 piece | potato | cooked | baked'],
  ['150 g baked beans', '150 g | baked beans'],
  ['1 shot espresso', '1 piece/shot | espresso'],
  ['🥚 3 eggs', '3 piece | eggs'],
  ['2 ביצים', '2 piece | ביצים'],
  ['1.500 g flour', 'open g | flour'],
  ['1 000 g flour', 'open piece | 000 g flour'],
  ['3 eggs 4', 'open piece | eggs 4'],
  ['400 g tins tomatoes', 'open pack/tin | tomatoes'],
  ['2 pints milk', '2 piece/pint | milk'],
  ['1 stick butter', '1 piece/stick | butter'],
  ['yolks of 3 eggs', '3 piece | egg yolks'],
  ['finely grated zest of 1 lemon', '1 piece/lemon | lemon zest | finely grated'],
  ['200 g', '200 g | '],
  ['1 ripe medium avocado', '1 piece/medium | avocado | ripe'],
  ['knob of butter', 'open piece/knob | butter'],
  ['2 skinless chicken breasts (about 300 g)', '2 piece =285–315g | skinless chicken breasts'],
  ['a slice or two of bread', '1–2 piece/slice | bread'],
  ['2 handfuls baby spinach (60 g)', '2 piece/handful =60g | baby spinach'],
  ['1 tbsp butter or oil', '1 tbsp | butter or oil'],
  ['90 g (uncooked) basmati rice', '90 g | basmati rice | raw'],
  ['1kg 200g beef', '1200 g | beef'],
  ['100 g tinned sweetcorn, drained', '100 g | tinned sweetcorn | drained'],
  ['a 400 g tin of chickpeas', '1 pack/tin =400g | chickpeas'],
];

describe('an ingredient as written', () => {
  test.each(READ)('%s', (text, expected) => {
    expect(brief(text)).toBe(expected);
  });

  test.each<[string, string]>([
    ['½½ cup oats', 'number-not-read'],
    ['1e9 g flour', 'number-not-read'],
    ['0 eggs', 'zero-amount'],
    ['0 g salt', 'zero-amount'],
    ['-3 eggs', 'negative-amount'],
    ['1/0 cup milk', 'divided-by-zero'],
    ['99999999999 g milk', 'number-too-large'],
    ['3-2 eggs', 'range-order'],
    ['1,500 g flour', 'thousands-or-decimal'],
    ['1.500 g flour', 'thousands-or-decimal'],
    ['1 000 g flour', 'two-amounts'],
    ['3 eggs 4', 'two-amounts'],
    ['1 cup or 150 g berries', 'two-amounts'],
    ['2 cm piece of ginger', 'length-not-amount'],
    ['1 T sugar', 'unit-not-known'],
    ['a couple of eggs', 'vague-amount'],
    ['up to 3 tbsp water', 'one-sided-amount'],
    ['pinch of salt', 'no-number'],
    ['400 g tins tomatoes', 'no-number'],
    ['½ tsp each cumin and paprika', 'each-of-several'],
    ['eggs 3', 'amount-not-found'],
    ['salt', 'no-amount'],
  ])('%s stays open: %s', (text, code) => {
    expect(readIngredient(text).map(({ quantity }) => quantity)).toEqual([null]);
    expect(codes(text)).toContain(code);
  });

  test('a remark beside an amount that was read', () => {
    expect(codes('200 g')).toEqual(['no-food']);
    expect(codes('2 tins (400 g) tomatoes')).toEqual(['pack-weight-unclear']);
    expect(codes('1 tin (400 g) butter beans, drained')).toEqual(['drained-weight-unknown']);
    expect(codes('200 g chick\u200bpeas')).toEqual(['unseen-signs']);
    expect(codes('200 g raw or cooked prawns')).toEqual(['two-states']);
    expect(codes('salt to taste')).toEqual([]);
  });

  test('ounces on a tin are a weight, exact, though no grams were said', () => {
    const [tin] = readIngredient('1 (14 oz) can black beans');
    expect(tin?.grams).toBeNull();
    // 14 × 28.349523125 g (NIST SP 811, Appendix B).
    expect(tin?.weight?.valueMg).toBe(396_893);
  });

  test('a line longer than an ingredient holds is told; far beyond it is kept unread', () => {
    const long = `200 g ${'oats '.repeat(100)}`.trim();
    expect(readIngredient(long)).toMatchObject([{ text: long, quantity: { low: { num: 200 } } }]);
    expect(codes(long)).toEqual(['too-long']);
    expect(readIngredient('x'.repeat(5000))).toMatchObject([{ quantity: null }]);
  });
});

describe('a pasted list', () => {
  test('headings apart, blank lines dropped, one ingredient a line', () => {
    const list = readIngredientList(
      'Ingredients\n\nFor the sauce:\n- 2 tbsp oil\n\n# Topping\n1 egg + 2 whites\nFor the crumb\n• salt',
    );
    expect(list.headings.map(({ at, text }) => `${at} ${text}`)).toEqual([
      '1 Ingredients',
      '3 For the sauce:',
      '6 Topping',
      '8 For the crumb',
    ]);
    expect(list.lines.map(({ at, parts }) => `${at}: ${parts.map(inBrief).join(' + ')}`)).toEqual([
      '4: 2 tbsp | oil',
      '7: 1 piece | egg + 2 piece | egg whites',
      '9: open – | salt',
    ]);
    expect(list.rest).toBe('');
    expect(list.remarks).toEqual([]);
  });

  test('markup is cleaned away; what is no tag stays', () => {
    const list = readIngredientList(
      '<h3>For the sauce</h3><ul class="a"><li>200&nbsp;g <b>cr&egrave;me</b></li><li>&frac12; cup milk</li></ul>1 egg<br/>2 tbsp oil (<5 g fat) & 1 tsp salt',
    );
    expect(list.headings.map(({ text }) => text)).toEqual(['For the sauce']);
    expect(list.lines.map(({ text }) => text)).toEqual([
      '200 g crème',
      '½ cup milk',
      '1 egg',
      '2 tbsp oil (<5 g fat) & 1 tsp salt',
    ]);
    expect(list.remarks.map(({ code }) => code)).toEqual(['markup-removed']);
  });

  test('what no dish holds comes back unread, and so does a line that is too long', () => {
    const long = `1 tsp ${'x'.repeat(400)}`;
    const rows = Array.from({ length: 10_000 }, (_, index) => `${index + 1} g oats`);
    const list = readIngredientList([long, ...rows].join('\n'));
    expect(list.lines).toHaveLength(400);
    expect(list.rest.split('\n')).toEqual([long, ...rows.slice(400)]);
    expect(list.remarks.map(({ code, path }) => `${path} ${code}`)).toEqual([
      'line 1 too-long',
      'line 402 too-many-lines',
    ]);
  });
});

/** Words, numbers and signs as in lists of ingredients, and any text at all. */
const PIECES = [
  '1',
  '½',
  '1/2',
  '3-2',
  '1e9',
  '0',
  '-3',
  ',',
  '(',
  ')',
  '+',
  ' ',
  ' ',
  ' ',
  '\n',
  '–',
  'x',
  'of',
  'a',
  'half',
  'cup',
  'g',
  'tins',
  'egg',
  'whites',
  'juice',
  'plus',
  'and',
  'chopped',
  'drained',
  'large',
  '\u200b',
  '<li>',
  '&amp;',
  '&#x1F95A;',
  'ביצים',
  '🥚',
  '%',
  '/',
  '[ ]',
  ':',
  'each',
  'or',
  'to',
];
const written = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 80 }),
  fc.array(fc.constantFrom(...PIECES), { maxLength: 30 }).map((pieces) => pieces.join('')),
  fc.array(fc.constantFrom(...PIECES), { maxLength: 30 }).map((pieces) => pieces.join(' ')),
);

/** All that is seen of a text, without blanks and the signs that stand before a line. */
const seen = (text: string) => text.replace(/[\p{Cf}\p{Cc}\s]/gu, '');

describe('laws', () => {
  test('any text is read, and no word of it is lost', () => {
    fc.assert(
      fc.property(written, (text) => {
        const kept = seen(
          readIngredient(text)
            .map((part) => part.text)
            .join(''),
        );
        expect(seen(text).endsWith(kept)).toBe(true);
        const dropped = seen(text).slice(0, seen(text).length - kept.length);
        expect(dropped).toMatch(/^(?:[^\p{L}\p{N}]|\[[xX]\]|\(?\d{1,3}[.)])*$/u);
      }),
      { numRuns: 2000 },
    );
  });

  test('any list is read', () => {
    fc.assert(
      fc.property(fc.array(written, { maxLength: 8 }), (rows) => {
        const list = readIngredientList(rows.join('\n'));
        expect(list.lines.every(({ parts }) => parts.length > 0)).toBe(true);
      }),
    );
  });

  test('amount, unit and food printed and read again are the same', () => {
    const ratio = fc.record({
      num: fc.integer({ min: 1, max: 400 }),
      den: fc.constantFrom(1, 2, 3, 4, 8),
    });
    const unit = fc.constantFrom('g', 'kg', 'oz', 'lb', 'ml', 'l', 'tsp', 'tbsp', 'cup', 'serving');
    const food = fc.constantFrom('oats', 'egg whites', 'Greek yoghurt', 'part-skim mozzarella');
    fc.assert(
      fc.property(ratio, ratio, unit, food, (a, b, said, name) => {
        const [low, high] = [a, b].sort((x, y) => x.num / x.den - y.num / y.den);
        if (!low || !high) throw new Error('two ends');
        const print = (part: ReadIngredient | undefined) =>
          part?.quantity ? `${quantityText(part.quantity)} ${part.unit} ${part.food}` : 'none';
        const [first] = readIngredient(`${quantityText({ low, high })} ${said} ${name}`);
        expect(first).toMatchObject({ unit: said, food: name });
        expect((first?.quantity?.high.num ?? NaN) * high.den).toBe(
          high.num * (first?.quantity?.high.den ?? NaN),
        );
        expect(print(readIngredient(print(first))[0])).toBe(print(first));
      }),
    );
  });

  test.each<[string, (size: number) => string]>([
    ['brackets', (size) => '('.repeat(size)],
    ['tags', (size) => '<a'.repeat(size)],
    ['open and closed', (size) => '<a>'.repeat(size)],
    ['entities', (size) => '&amp'.repeat(size)],
    ['plus', (size) => '1 +'.repeat(size)],
    ['lines', (size) => '1 g a\n'.repeat(size)],
    ['blanks', (size) => `1${' '.repeat(size)}g`],
    ['spaces and dashes', (size) => ' - '.repeat(size)],
    ['long words', (size) => 'x'.repeat(size)],
    ['digits', (size) => '1/'.repeat(size)],
  ])('a text made to be slow comes to an end: %s', (_, made) => {
    // Work that grew with the square of the length would not end before the test's time is over.
    for (const text of [made(150), made(200_000)]) {
      expect(readIngredientList(text).lines).toBeInstanceOf(Array);
      expect(readIngredient(text)).toBeInstanceOf(Array);
    }
  });
});

// Common practice, no source.
test('what is said behind the last of several seasonings is said of each', () => {
  expect(
    readIngredient('pepper & salt, to taste').map(({ note, remarks }) => [note, remarks]),
  ).toEqual([
    ['to taste', []],
    ['to taste', []],
  ]);
});
