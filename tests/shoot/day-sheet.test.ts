import { describe, expect, it } from 'vitest';
import { UNSAID_LINE } from '#lib/episode/unsaid';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { Food } from '#lib/foods/food';
import { daySheet } from '#lib/shoot/day-sheet';
import { daySheetText } from '#lib/shoot/day-sheet-text';
import { clockText, degreesText, minutesText } from '#lib/shoot/day-words';
import { changeMin, lengthRange } from '#lib/shoot/minutes';
import { planDay } from '#lib/shoot/plan-day';
import { wrapText } from '#lib/shoot/wrap-text';
import { dayFile, link, oven, segment, step } from './made-day';
import { randomDay } from './random-day';

const textOf = (file: EpisodeFile): string => daySheetText(file, planDay(file, { seed: 1 }));
const sheetOf = (file: EpisodeFile) => daySheet(file, planDay(file, { seed: 1 }));
const width = (line: string): number => [...line].length;

const turkey: Food = {
  id: 'turkey',
  kind: 'reference',
  name: 'Turkey, ground, 93 % lean, raw',
  section: 'meatAndFish',
  witnessId: null,
  version: {
    id: 'turkey-1',
    seq: 1,
    basis: 'per100g',
    serving: null,
    values: {},
    secondColumn: null,
    carbBasis: 'total',
    state: 'raw',
    factors: null,
    refuse: null,
    rule: 'asPrinted',
    source: 'made for this test',
    release: '',
    sourceNo: '',
    dateRead: null,
    kept: [],
  },
  measures: [],
  yields: [],
  allergens: [],
};
const withTurkey = (coreMilliC: number, more: Partial<Segment> = {}): EpisodeFile => ({
  ...dayFile(
    [
      segment(
        'loaf',
        [
          step('mix', { title: 'Mix the loaf', hands: true, onCamera: true, note: 'Cold bowl.' }),
          step('bake', {
            title: 'Bake it',
            oven: { ovenId: 'oven', milliC: 220_000 },
            racks: 1,
            coreMilliC,
            restS: 600,
          }),
          step('show', { title: 'Show it hot', role: 'shoot', hands: true, daylight: true }),
        ],
        {
          title: 'Turkey loaf',
          recipe: {
            id: 'r',
            title: 'Turkey loaf',
            lines: [
              {
                id: 'l',
                text: '500 g ground turkey',
                quantity: null,
                unit: null,
                measureName: null,
                foodId: 'turkey',
                match: 'confirmed',
                orFoodId: null,
                madeFrom: null,
                cookMethod: null,
                retention: null,
                bounded: [],
                state: 'raw',
                asBought: false,
                planned: null,
                leftBehind: { kind: 'none' },
                spoiltByTake: true,
                note: '',
                ...UNSAID_LINE,
              },
            ],
            weighings: [],
            portions: [],
            method: '',
            cooking: null,
          },
          shots: [{ id: 's', title: 'Steam', stepId: 'show', framing: 'close', lengthS: 5 }],
          perishables: [
            {
              id: 'lot',
              name: 'Ground turkey',
              limitS: 7200,
              thrownAway: false,
              spans: [
                { fromStepId: 'mix', fromAnchor: 'start', toStepId: 'bake', toAnchor: 'start' },
              ],
            },
          ],
          ...more,
        },
      ),
    ],
    [link('mix', 'bake', 0, null), link('bake', 'show', 0, 900, { reason: 'shown hot' })],
  ),
  foods: [turkey],
});

describe('the day sheet as text', () => {
  it('says what, when, with what, which shot, which lot, which temperature, and who says so', () => {
    expect(textOf(withTurkey(74_000))).toBe(`DAY SHEET: A small day
2026-06-06, packed, from 09:00, wrap 09:40 with the washing-up done.
When the sun is up is not known.

BY THE CLOCK  (H hands, O oven, - by itself, C camera)
09:00-09:20       O   Heat Oven to 220 °C
09:10-09:20      H C  Mix the loaf (Turkey loaf)
                      Cold bowl.
09:20-09:30       O   Bake it (Turkey loaf), Oven at 220 °C
09:30-09:40      H    Show it hot (Turkey loaf)
                      shot: Steam, close

SOON AFTER, HOT OR FRESH
- 09:30 Show it hot, at most 15 min after Bake it (09:30, out of 220 °C): shown
  hot

OUT OF THE REFRIGERATOR
- Ground turkey: 10 min in all, of 2 h at most

INSIDE TEMPERATURES
- Bake it, at 09:30: 74 °C, then rest 10 min

CAUTIONS
- Inside temperature of poultry, whole, parts, ground or stuffing: at least 73.9
  °C (165 °F). [FoodSafety.gov, Safe Minimum Internal Temperature Chart, 12
  April 2019]
- Perishable food stands out of the refrigerator at most 2 h in all, 1 h above
  32 °C (90 °F). [USDA FSIS, Danger Zone (40 °F to 140 °F)]
- Cool cooked food from 57 °C (135 °F) to 21 °C (70 °F) within 2 h and to 5 °C
  (41 °F) within 6 h in all. [FDA Food Code, 3-501.14(A)]
- Eat cooked leftovers within 3 to 4 days at 4 °C (40 °F) or freeze them.
  [FoodSafety.gov, Cold Food Storage Chart]
Follow your local food code and licensed practice; figures here are for
information only.
`);
  });

  it('is at most 80 columns wide, with LF alone and no blank at a line end, whatever is in it', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const file = randomDay(seed);
      const long = {
        ...file,
        episode: { ...file.episode, title: `${'Überlang'.repeat(20)} und noch länger` },
      };
      const text = textOf(long);
      expect(text.endsWith('\n')).toBe(true);
      expect(text).not.toContain('\r');
      for (const line of text.split('\n')) {
        expect(width(line)).toBeLessThanOrEqual(80);
        expect(line).toBe(line.trimEnd());
      }
    }
  });

  it('stands first what cannot be kept', () => {
    const file = dayFile([segment('a', [step('one')])], [], { wrapByMin: 545 });
    expect(textOf(file).split('\n').slice(3, 6)).toEqual([
      '',
      'NO PLAN FOUND THAT KEEPS THESE',
      '- The day wraps at 09:10; it should be done by 09:05.',
    ]);
  });

  it('gives a lot over its limit a word of its own', () => {
    const spans = [
      { fromStepId: 'mix', fromAnchor: 'start', toStepId: 'show', toAnchor: 'end' },
    ] as const;
    const lot = { id: 'lot', name: 'Cream', limitS: 600, thrownAway: false, spans: [...spans] };
    expect(textOf(withTurkey(74_000, { perishables: [lot] }))).toContain(
      '- Cream: 30 min in all, of 10 min at most - TOO LONG',
    );
  });
});

describe('the day sheet as data', () => {
  it('has a column for the hands, for each oven and for what runs by itself, and every entry in one', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const file = randomDay(seed);
      const plan = planDay(file, { seed: 1 });
      const { columns, blocks, rows } = daySheet(file, plan);
      expect(columns.map(({ id }) => id)).toEqual([
        'hands',
        ...file.kitchen.ovens.map(({ id }) => id),
        'by-itself',
      ]);
      expect(rows.map(({ entry }) => entry)).toEqual(plan.entries);
      for (const entry of plan.entries) {
        const own = blocks.filter((block) => block.entryId === entry.id);
        const expected = [
          ...(entry.hands ? ['hands'] : []),
          ...(entry.ovenId === null ? [] : [entry.ovenId]),
        ];
        expect(own.map(({ columnId }) => columnId)).toEqual(
          expected.length > 0 ? expected : ['by-itself'],
        );
        expect(own[0]).toMatchObject({ startMin: entry.startMin, endMin: entry.endMin });
      }
    }
  });

  it('remarks an inside temperature below the chart for the raw food in the dish', () => {
    const remarks = (milliC: number) =>
      sheetOf(withTurkey(milliC)).rows.flatMap((row) => row.remarks);
    // FoodSafety.gov: poultry 165 °F, 73.9 °C.
    expect(remarks(73_900)).toEqual([]);
    expect(remarks(71_100)[0]).toContain('at least 73.9 °C (165 °F)');
  });

  it('remarks a step that needs daylight and lies outside it', () => {
    const file = withTurkey(74_000);
    const kitchen = { ...file.kitchen, lat: 55.7, lon: 12.6 };
    const lit = sheetOf({ ...file, kitchen });
    expect(lit.daylight?.kind).toBe('riseAndSet');
    expect(lit.rows.flatMap((row) => row.remarks)).toEqual([]);
    const day = file.day === null ? null : { ...file.day, startMin: 1380 };
    const dark = sheetOf({ ...file, day, kitchen });
    expect(dark.rows.flatMap((row) => row.remarks)[0]).toMatch(
      /^needs daylight, and the sun is up from 04:\d\d to 21:\d\d$/,
    );
  });

  it('remarks an oven that would stand hot and empty', () => {
    const at = { oven: { ovenId: 'oven', milliC: 200_000 }, racks: 1 };
    const file = dayFile([segment('a', [step('one', at), step('two', at)])], [], {
      pins: [{ id: 'p', stepId: 'two', notBeforeMin: 900, notAfterMin: null }],
    });
    const first = dayFile(
      [segment('a', [step('one', at), step('two', at)])],
      [link('one', 'two', 7200, null)],
    );
    expect(sheetOf(first).rows.flatMap((row) => row.remarks)).toEqual([
      'Oven stands unused from 09:28: switch it off, and on again by 11:10',
    ]);
    // Without a reason to bake early the two share one heating.
    expect(sheetOf(file).rows.flatMap((row) => row.remarks)).toEqual([]);
  });
});

describe('words and whole minutes', () => {
  it.each([
    [0, '00:00'],
    [545, '09:05'],
    [1439, '23:59'],
    [1450, '00:10 next day'],
    [2880, '00:00 day 3'],
  ])('minute %i is %s', (minute, text) => {
    expect(clockText(minute)).toBe(text);
  });

  it.each([
    [0, '0 min'],
    [59, '59 min'],
    [60, '1 h'],
    [90, '1 h 30 min'],
  ])('%i minutes are "%s"', (minutes, text) => {
    expect(minutesText(minutes)).toBe(text);
  });

  // °F = °C × 9/5 + 32: 350 °F = 176.67 °C, 180 °C = 356 °F, 425 °F = 218.33 °C.
  it.each([
    [176_667, 'US', '350 °F'],
    [180_000, 'US', '356 °F'],
    [218_333, 'US', '425 °F'],
    [180_000, 'EU', '180 °C'],
  ] as const)('%i thousandths in the %s are %s', (milliC, region, text) => {
    expect(degreesText(milliC, region)).toBe(text);
  });

  it('a change of temperature is rounded up to whole minutes', () => {
    // 180 °C at 6 s: 1,080 s; 181 °C: 1,086 s; down 50 °C at 12 s: 600 s.
    expect(changeMin(oven, 20_000, 200_000)).toBe(18);
    expect(changeMin(oven, 20_000, 201_000)).toBe(19);
    expect(changeMin(oven, 200_000, 150_000)).toBe(10);
    expect(changeMin(oven, 200_000, 200_000)).toBe(0);
  });

  it.each([
    [61, null, { min: 2, max: 2 }],
    [0, null, { min: 0, max: 0 }],
    [780, { minS: 720, maxS: 930 }, { min: 12, max: 15 }],
    [100, { minS: 61, maxS: 119 }, { min: 2, max: 2 }],
    [100, { minS: 0, maxS: 119 }, { min: 2, max: 2 }],
  ])('%i s with the range %o take %o', (usualS, choose, range) => {
    expect(lengthRange({ usualS, choose })).toEqual(range);
  });

  it('wraps at spaces, cuts what is too long, and counts what stands before', () => {
    expect(wrapText('one two three', 9)).toEqual(['one two', 'three']);
    expect(wrapText('abcdefgh ij', 6, '- ', '  ')).toEqual(['- abcd', '  efgh', '  ij']);
    expect(wrapText('', 9, 'x ')).toEqual(['x']);
  });
});
