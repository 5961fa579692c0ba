import { renderToStaticMarkup } from 'react-dom/server';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { cellOf, type Food } from '#lib/foods/food';
import { TABLE_NUTRIENTS } from '#lib/foods/label-panel';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { cellShown, cellTyped, readCell } from '#lib/foods/read-cell';
import { lotMg } from '#lib/shopping/shopping-list';
import { moveDelta, signedGrams } from '#lib/shopping/stock-move';
import { DEFAULT_KITCHEN } from '#lib/store/default-kitchen';
import { KitchenView } from '../../app/kitchen/_components/kitchen-view';
import { FoodView } from '../../app/pantry/_components/food-view';
import { LabelForm } from '../../app/pantry/_components/label-form';
import { emptyLabel, labelTexts } from '../../app/pantry/_components/label-texts';
import { LookUp } from '../../app/pantry/_components/look-up';
import { NewFoodForm } from '../../app/pantry/_components/new-food-form';
import { Stock } from '../../app/pantry/_components/stock';
import { mendValue, readMend, SECOND, VALUE } from '../../app/pantry/field-names';
import { readAgainForm } from '../../app/pantry/schema';
import { demoFile, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({ usePathname: () => '/', redirect: vi.fn() }));

const demo = demoFile();
const labels = demo.foods.filter(({ kind }) => kind === 'label');
const references = demo.foods.filter(({ kind }) => kind === 'reference');

describe('a label value', () => {
  test.each([
    ['0', { kind: 'eq', mantissa: 0, scale: 0 }],
    ['0.0', { kind: 'eq', mantissa: 0, scale: 1 }],
    ['0.00', { kind: 'eq', mantissa: 0, scale: 2 }],
    ['2,5 g', { kind: 'eq', mantissa: 25, scale: 1 }],
    ['<1', { kind: 'lessThan', mantissa: 1, scale: 0 }],
    ['less than 0.5 g', { kind: 'lessThan', mantissa: 5, scale: 1 }],
    ['Trace', { kind: 'trace' }],
    ['', { kind: 'missing' }],
  ])('%s keeps its digits', (text, cell) => {
    expect(readCell(text, 'fat')).toEqual(cell);
  });

  test.each(['some', '-1', '1.2.3', '5 mg', '1 000', '<'])('%s is none of fat', (text) => {
    expect(readCell(text, 'fat')).toBeNull();
  });

  test('as typed again reads back the same', () => {
    const digits = { mantissa: fc.nat(1_000_000), scale: fc.integer({ min: 0, max: 6 }) };
    const cells = fc.oneof(
      fc.record({ kind: fc.constant('eq' as const), ...digits }),
      fc.record({ kind: fc.constant('lessThan' as const), ...digits }),
      fc.constant({ kind: 'trace' as const }),
      fc.constant({ kind: 'missing' as const }),
    );
    fc.assert(
      fc.property(cells, (cell) => {
        expect(readCell(cellTyped(cell), 'protein')).toEqual(cell);
      }),
    );
    expect(cellShown({ kind: 'missing' })).toBe('no value');
  });
});

function foodPage(food: Food, own: boolean): string {
  const stored = { id: food.id, food, own, revs: {}, packs: [], yieldFacts: {} };
  return renderToStaticMarkup(<FoodView stored={stored} versions={[food.version]} />);
}

describe('a food’s page', () => {
  test('of a reference food shows every column, its digits, blanks as no value, and the source', () => {
    expect(TABLE_NUTRIENTS).toHaveLength(46);
    for (const food of references) {
      const text = words(foodPage(food, false));
      for (const nutrient of TABLE_NUTRIENTS) {
        const { label, unit } = NUTRIENTS[nutrient];
        const cell = cellShown(cellOf(food.version.values, nutrient));
        expect(text).toContain(`${label} ${cell} ${unit}`);
      }
      expect(text).toContain(food.version.source);
      expect(text).toContain(food.version.sourceNo);
      expect(text).not.toContain('Read the label again');
    }
    const blanks = references.flatMap(({ version }) =>
      TABLE_NUTRIENTS.filter((nutrient) => cellOf(version.values, nutrient).kind === 'missing'),
    );
    expect(blanks.length).toBeGreaterThan(0);
  });

  test('of an own food can be read again, and its form reads back the same label', () => {
    expect(labels.length).toBeGreaterThan(0);
    for (const food of labels) {
      expect(words(foodPage(food, true))).toContain('Read the label again');
      const rule = food.version.rule === 'eu' ? 'eu' : 'us';
      const read = readAgainForm.safeParse({ foodId: food.id, rule, ...labelTexts(food) });
      expect(read.error).toBeUndefined();
      const { basis, serving, values, secondColumn, carbBasis, state } = food.version;
      const stated = Object.entries(values).filter(([, cell]) => cell.kind !== 'missing');
      expect(read.data?.label).toMatchObject({ basis, serving, carbBasis, state });
      expect(read.data?.label.values).toEqual(Object.fromEntries(stated));
      expect(read.data?.label.secondColumn === null).toBe(secondColumn === null);
    }
  });

  test('of an own food reads back its peel and trim, which its form shows', () => {
    const [label] = labels;
    if (!label) throw new Error('the demo has labels');
    for (const refuse of [
      null,
      { percent: 12, text: 'shell', inValues: false },
      { percent: 20, text: 'bone', inValues: true },
    ]) {
      const food = { ...label, version: { ...label.version, refuse } };
      const rule = food.version.rule;
      const read = readAgainForm.safeParse({ foodId: food.id, rule, ...labelTexts(food) });
      expect(read.data?.label.refuse).toEqual(refuse);
      const page = foodPage(food, true);
      if (refuse) expect(words(page)).toContain(`${refuse.percent} % (${refuse.text})`);
      expect(words(page).includes('the values are for it as bought')).toBe(
        refuse?.inValues === true,
      );
    }
    const { error } = readAgainForm.safeParse({
      foodId: 'f',
      ...labelTexts(label),
      refuseText: 'bone',
    });
    expect(error?.issues.map(({ path }) => path)).toEqual([['refusePercent']]);
  });
});

describe('the label form', () => {
  test.each(['us', 'eu'] as const)(
    'asks for the serving first, then the %s panel in order',
    (rule) => {
      const markup = renderToStaticMarkup(<NewFoodForm rule={rule} />);
      const names = [...markup.matchAll(/ name="([^"]+)"/g)].map((match) => match[1] ?? '');
      const first = rule === 'us' ? 'energyKcal' : 'energyKj';
      expect(names.indexOf('servingG')).toBeLessThan(names.indexOf(`${VALUE}${first}`));
      const values = names.filter((name) => name.startsWith(VALUE));
      expect(values[0]).toBe(`${VALUE}${first}`);
      expect(new Set(values).size).toBe(values.length);
      expect(values).toContain(rule === 'us' ? `${VALUE}sodium` : `${VALUE}salt`);
    },
  );

  test.each(['us', 'eu', 'asPrinted'] as const)(
    'the %s panel shows what each number stands for',
    (rule) => {
      const texts = {
        ...emptyLabel(rule),
        servingG: '30',
        [`${VALUE}fat`]: '2.5',
        [`${SECOND}fat`]: rule === 'us' ? '9' : '0.8',
      };
      const markup = renderToStaticMarkup(
        <LabelForm
          id="label"
          action={(state) => Promise.resolve(state)}
          hidden={{}}
          rule={rule}
          texts={texts}
          submit="Keep"
          cancelHref="/pantry"
        />,
      );
      const described =
        /<input[^>]*aria-describedby="([^"]+)"[^>]* name="value-fat"/.exec(markup)?.[1] ?? '';
      const said = new RegExp(`id="${described}"[^>]*>(.*?)</p>`).exec(markup)?.[1] ?? '';
      // US: nearest 0.5 g below 5 g; EU: nearest 0.1 g below 10 g.
      expect(words(said)).toBe(`stands for ${rule === 'us' ? '2.25–2.75' : '2.45–2.55'} g`);
      // US: 2.25 to 2.75 g in 29.5 to 30.5 g is 7.377 to 9.322 g in 100 g, beside 8.5 to 9.5 g. EU: 2.45 to 2.55 g in
      // 100 g is 0.723 to 0.778 g in a serving, beside 0.75 to 0.85 g. The label without a rule begins with the serving.
      if (rule !== 'asPrinted') {
        const together = rule === 'us' ? 'both columns: 8.5–9.32 g' : 'both columns: 0.75–0.778 g';
        expect(words(markup)).toContain(together);
      }
      expect(words(markup)).toContain('Where the ranges come from');
    },
  );

  test('a mend keeps to the fields of a label', () => {
    const value = mendValue([
      ['value-protein', '24'],
      ['servingG', '60'],
      ['name', 'Another'],
    ]);
    expect(readMend(value)).toEqual({ 'value-protein': '24', servingG: '60' });
  });

  test('every control has a label', () => {
    const markup = renderToStaticMarkup(<NewFoodForm rule="us" />);
    const labelled = new Set([...markup.matchAll(/<label for="([^"]+)"/g)].map((m) => m[1]));
    const controls = [...markup.matchAll(/<(?:input|select|textarea)[^>]*>/g)]
      .map(([tag]) => tag)
      .filter((tag) => !tag.includes('type="hidden"'));
    expect(controls.length).toBeGreaterThan(60);
    for (const tag of controls) {
      expect(labelled.has(/ id="([^"]+)"/.exec(tag)?.[1] ?? '')).toBe(true);
    }
  });
});

describe('stock', () => {
  const lots = demo.stock.map((lot) => ({ id: lot.id, rev: 1, foodName: lot.foodId, lot }));

  test('each lot shows its sum and its whole ledger', () => {
    const page = <Stock lots={{ rows: lots, next: null }} editing={null} today="2026-12-10" />;
    const markup = renderToStaticMarkup(page);
    expect(markup.match(/ledger/g)).toHaveLength(lots.length);
    const moves = demo.stock.flatMap((lot) => lot.moves);
    for (const move of moves) expect(words(markup)).toContain(signedGrams(move.deltaMg));
  });

  test('what is past its use-by is said in words', () => {
    const page = <Stock lots={{ rows: lots, next: 'x' }} editing={null} today="2030-01-01" />;
    const text = words(renderToStaticMarkup(page));
    expect(text).toContain(': past');
    expect(text).toContain('Older lots');
  });

  test('a move adds, takes or sets right, and never takes more than is there', () => {
    const amount = fc.nat(1_000_000);
    fc.assert(
      fc.property(
        amount,
        amount,
        fc.constantFrom('bought', 'counted', 'used', 'thrownAway'),
        (there, mg, kind) => {
          const start = {
            id: 'm',
            kind: 'bought' as const,
            deltaMg: there,
            at: '2026-12-01T00:00:00Z',
          };
          const delta = moveDelta({ moves: [start] }, kind, mg);
          if (!delta.ok) {
            expect(kind === 'used' || kind === 'thrownAway').toBe(true);
            expect(mg).toBeGreaterThan(there);
            return;
          }
          const after = there + delta.value;
          expect(after).toBeGreaterThanOrEqual(0);
          if (kind === 'counted') expect(after).toBe(mg);
          if (kind === 'bought') expect(delta.value).toBe(mg);
        },
      ),
    );
    const [lot] = demo.stock;
    if (!lot) throw new Error('the demo has stock');
    const over = moveDelta(lot, 'used', lotMg(lot) + 20_000);
    expect(over.ok ? '' : over.problems[0]?.message).toContain('20 g more than is there');
  });
});

test('a look-up that finds nothing says what to do', () => {
  const text = words(renderToStaticMarkup(<LookUp query="xyzzy" found={[]} />));
  expect(text).toContain('Nothing fits “xyzzy”');
});

test('the kitchen page names what has no source, and every part of the kitchen', () => {
  const stored = { id: 'k', kitchen: DEFAULT_KITCHEN, revs: {} };
  const text = words(renderToStaticMarkup(<KitchenView stored={stored} zones={['UTC']} />));
  expect(text.match(/common practice, no source/g)?.length).toBeGreaterThanOrEqual(6);
  const own = { id: 'k', kitchen: demo.kitchen, revs: {} };
  const markup = renderToStaticMarkup(<KitchenView stored={own} zones={['UTC']} />);
  for (const { name } of [...demo.kitchen.ovens, ...demo.kitchen.scales]) {
    expect(markup).toContain(`value="${name}"`);
  }
  expect(words(markup)).toContain('20 °C to 160 °C: 9.5 min');
});
