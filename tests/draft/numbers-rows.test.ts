import { describe, expect, test } from 'vitest';
import { isNumbersRow } from '#lib/draft/numbers-row';
import { readDraft } from '#lib/draft/read-draft';
import { fold } from '#lib/units/plain-words';
import { sketch } from './sketch';

// Common practice of descriptions, no source; all invented.
const sketched = (description: string) => {
  const read = readDraft({ description });
  return read.ok ? sketch(read.value) : read.problems;
};

const ROWS = [
  '188 kcal per finger, £2.10 total',
  '430 cal a wrap',
  '188 kcal / finger',
  '512 cal / 38P / 41C / 19F',
  '38P 41C 19F',
  'P38 C41 F19',
  'P: 38g | C: 41g | F: 19g',
  '38g P / 41g C / 19g F',
  '38 g protein per box',
  '1790 kJ / 428 kcal per wedge, 12 g sugar, 0.6 g salt',
  '£2.10 total, 14p a finger',
  '$3.15 a box',
  'Cost: €5,40 for the tray',
  '95 cents per bar',
];
const NO_ROWS = [
  '30 g protein powder',
  '1 protein bar (205 kcal)',
  '25 g protein granola',
  '100 calorie thins',
  '1 cal-free syrup',
  '200 g fat free quark',
  '12 g sugar',
  '2 c flour',
  '180C / 350F',
  '150 g turkey, £1.35',
  '40 g goose fat',
];

describe('a line of numbers alone', () => {
  test.each(ROWS)('is one: %s', (row) => expect(isNumbersRow(fold(row))).toBe(true));
  test.each(NO_ROWS)('is none: %s', (row) => expect(isNumbersRow(fold(row))).toBe(false));

  test.each(ROWS)('is no ingredient: %s', (row) => {
    expect(sketched(`Barley tray (serves 4)\n150 g barley\n40 g leeks\n${row}`)).toEqual([
      '- dish Barley tray ×4',
      '  150 g barley',
      '  40 g leeks',
      'left description 4 numbers',
    ]);
  });

  test('behind an ingredient is no ingredient beside it', () => {
    expect(sketched('Barley tray\n150 g fat free quark, 98 kcal\n40 g leeks, 12 kcal, 9p')).toEqual(
      ['- dish Barley tray', '  150 g fat free quark', '  40 g leeks'],
    );
  });

  test('behind the portions leaves them said', () => {
    expect(sketched('Barley tray\n150 g barley\nMakes 9 fingers, 188 kcal each')).toEqual([
      '- dish Barley tray ×9',
      '  150 g barley',
    ]);
  });
});
