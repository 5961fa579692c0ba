import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { breakdown } from '#lib/figures/breakdown';
import { breakdownCsv } from '#lib/figures/breakdown-csv';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';
import { plainText } from '#lib/units/csv';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';
import { demoFile } from '../ui/page-support';

type Record_ = Readonly<Record<string, string>>;
const whole: NumberScope = { kind: 'whole', segmentId: 'd' };

function csvOf(file: EpisodeFile, scope: NumberScope, nutrient: Nutrient): string {
  const table = breakdown(file, scope, nutrient);
  if (!table) throw new Error('the scope is there');
  return breakdownCsv(table, 'the whole dish');
}

/** Read back by a general reader, strictly: every record as long as the head, CRLF alone. */
function readBack(text: string): readonly Record_[] {
  return parse(text, { columns: true, record_delimiter: '\r\n', relax_column_count: false });
}

const oneDish = (text: string, dish = 'd') =>
  aFile(
    [aDish('d', aRecipe('r', [{ ...grams('l', 'oats', 40), text }]), { title: dish })],
    [aFood('oats', { protein: '13.15', fibre: '' })],
  );

describe('a breakdown as CSV', () => {
  it('of the demo reads back row by row, and its rows sum to its sum', () => {
    const demo = demoFile();
    const scope: NumberScope = { kind: 'whole', segmentId: 'seg-loaf' };
    const table = breakdown(demo, scope, 'protein');
    const records = readBack(csvOf(demo, scope, 'protein'));
    expect(records).toHaveLength((table?.rows.length ?? 0) + 1);
    const sum = records.at(-1);
    expect(sum?.ingredient).toBe('sum: the whole dish');
    const added = records.slice(0, -1).reduce((all, row) => all + Number(row['protein (g)']), 0);
    expect(added).toBeCloseTo(Number(sum?.['protein (g)']), 2);
    expect(records[0]).toMatchObject({
      ingredient: '500 g ground turkey, 93 % lean',
      source: 'USDA SR28 05665',
      'value of the food': '18.73 g in 100 g',
    });
    const shares = records.slice(0, -1).map((row) => Number(row['share of uncertainty (%)']));
    expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(100, 2);
  });

  // RFC 4180, section 2: CRLF ends every record; quotes around commas, quotes and line breaks, quotes doubled.
  it('keeps every text through a general reader, whatever stands in it', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (text) => {
        const csv = csvOf(oneDish(text, 'a, "b"'), whole, 'protein');
        const [row] = readBack(csv);
        expect(row?.ingredient).toBe(plainText(text));
        expect(row?.dish).toBe('a, "b"');
        expect(csv.endsWith('\r\n')).toBe(true);
      }),
    );
    expect(readBack(csvOf(oneDish('two\r\nlines'), whole, 'protein'))[0]?.ingredient).toBe(
      'two\r\nlines',
    );
  });

  it.each(['=1+1', '+cmd', '-2+3', '@SUM(A1)', '  =A1', '\t=A1', '＝A1', '=HYPERLINK("x","y")'])(
    'gives no spreadsheet a formula: %j',
    (text) => {
      const [row] = readBack(csvOf(oneDish(text, text), whole, 'protein'));
      expect(row?.ingredient).toBe(`'${text}`);
      expect(row?.dish).toBe(`'${text}`);
    },
  );

  it('leaves plain words and numbers as they are', () => {
    expect(['-2.5', '500 g', 'egg - large', ''].map(plainText)).toEqual([
      '-2.5',
      '500 g',
      'egg - large',
      '',
    ]);
  });

  it('has no number for what is open, and only the known side of what is incomplete', () => {
    const open = aFile([aDish('d', aRecipe('r', [aLine('sauce', null)]))], []);
    const sum = readBack(csvOf(open, whole, 'protein')).at(-1);
    expect(sum).toMatchObject({
      'protein (g)': '',
      'protein (g) low': '',
      'protein (g) high': '',
      remark: 'open: no food chosen for sauce',
    });
    const partly = readBack(csvOf(oneDish('oats'), whole, 'fibre')).at(-1);
    expect(partly).toMatchObject({
      'fibre (g)': '',
      'fibre (g) low': '0',
      'fibre (g) high': '',
      remark: 'at least: no value for oats',
    });
  });
});
