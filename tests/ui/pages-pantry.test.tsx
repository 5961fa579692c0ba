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
import type { FoodInUse } from '#lib/store/read-foods-in-use';
import { UNSAID_PACK } from '#lib/episode/unsaid';
import { printGrams } from '#lib/units/print';
import { KitchenView } from '../../app/kitchen/_components/kitchen-view';
import { FoodList } from '../../app/pantry/_components/food-list';
import { FoodView } from '../../app/pantry/_components/food-view';
import { FoundFoods } from '../../app/pantry/_components/found-foods';
import { LabelForm } from '../../app/pantry/_components/label-form';
import { emptyLabel, labelTexts } from '../../app/pantry/_components/label-texts';
import { NewFoodForm } from '../../app/pantry/_components/new-food-form';
import { StockPart } from '../../app/pantry/_components/stock-part';
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
  const food: FoodInUse = {
    id: 'food',
    name: 'All lots of the demo',
    section: 'other',
    own: true,
    lots: demo.stock,
    packs: demo.packs,
    said: null,
    revs: {},
  };

  test('each lot that has something left shows its sum and its whole ledger', () => {
    const markup = renderToStaticMarkup(
      <StockPart food={food} today="2026-12-10" lastDays={new Map()} keeps="Nobody says" />,
    );
    for (const lot of demo.stock) {
      expect(words(markup)).toContain(`${printGrams(lotMg(lot))} g`);
      for (const move of lot.moves) expect(words(markup)).toContain(signedGrams(move.deltaMg));
    }
    expect(markup.match(/What happened to/g)).toHaveLength(demo.stock.length);
    expect(words(markup)).not.toContain('have it');
  });

  test('a food without lots asks in three answers, and says which was given', () => {
    const said = {
      foodId: 'food',
      answer: { is: 'notEnough' as const, on: '2026-12-05', remark: '' },
      opened: null,
    };
    const none = { ...food, lots: [], said };
    const markup = renderToStaticMarkup(
      <StockPart food={none} today="2026-12-10" lastDays={new Map()} keeps="–" />,
    );
    expect(markup.match(/aria-pressed="true"/g)).toHaveLength(1);
    expect(words(markup)).toContain('Not enough, you said on Sat 5 Dec.');
    const unsaid = { ...none, said: null };
    const asks = renderToStaticMarkup(
      <StockPart food={unsaid} today="2026-12-10" lastDays={new Map()} keeps="–" />,
    );
    expect(asks).not.toContain('aria-pressed="true"');
    expect(words(asks)).toContain('Nobody has said yet');
  });

  test('a food in use shows its last price, in its shop, and what is short', () => {
    const pack = {
      ...UNSAID_PACK,
      id: 'p',
      foodId: 'food',
      name: 'Tub',
      netMg: 450_000,
      netMl: null,
      drainedMg: null,
      gtin: null,
      price: { minor: 300, currency: 'USD', seenOn: '2026-12-01' },
      prices: [
        {
          shopId: 'quay',
          minor: 329,
          currency: 'USD',
          seenOn: '2026-12-05',
          count: 1,
          most: null,
          until: null,
        },
      ],
    };
    const list = (
      <FoodList
        foods={{ rows: [{ ...food, lots: [], packs: [pack] }], next: 'x' }}
        words=""
        shops={new Map([['quay', 'Quay market']])}
        short={new Map([['food', 'Short of 120 g for Sat 12 Dec']])}
      />
    );
    const text = words(renderToStaticMarkup(list));
    expect(text).toContain('Tub: USD 3.29, Quay market, seen Sat 5 Dec');
    expect(text).toContain('Short of 120 g');
    expect(text).toContain('More foods');
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
  const text = words(renderToStaticMarkup(<FoundFoods query="xyzzy" found={[]} />));
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
