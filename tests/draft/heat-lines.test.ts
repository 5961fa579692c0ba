import { describe, expect, test } from 'vitest';
import { heatLine } from '#lib/draft/heat-line';
import { readDraft } from '#lib/draft/read-draft';
import { saidSteps } from '#lib/draft/said-steps';
import { textRows } from '#lib/draft/text-rows';
import { sketch } from './sketch';

// Common practice of descriptions, no source; all invented.
const told = (text: string) => {
  const [row] = textRows(text);
  return row ? heatLine(row) : null;
};

describe('how hot and how long', () => {
  test.each([
    '165 °C, 24 min',
    '190C/170C fan',
    'Oven: 400F for 35 minutes from chilled',
    'Air fryer 185°C, 11 minutes',
    '35 min at 210C, middle shelf',
    '- Gas mark 6, 40 min',
    'Roast at 200 °C for 45 minutes',
    'Grill 4 min per side on high',
    'Slow cooker: 7 hours on low',
    '180 degrees fan for half an hour',
  ])('is a step: %s', (text) => expect(told(text)).toBe('step'));

  test.each(['Prep time: 15 min', 'Ready in 25 minutes', 'Total time 1 hour', '40 minutes'])(
    'is only the time of a dish: %s',
    (text) => expect(told(text)).toBe('time'),
  );

  test.each([
    '200 ml water at 40 °C',
    'Oven chips 300 g (200C, 20 min)',
    '2 minute noodles',
    'Boiled eggs (7 min)',
    'Roast chicken, cold',
    '38P | 44C | 12F',
    '50 g chocolate 70%',
    'Fan of basil leaves',
    '1 onion, fried 5 min',
    '2 x 400 g tins',
  ])('is left to others: %s', (text) => expect(told(text)).toBe(null));

  const sketched = (description: string) => {
    const read = readDraft({ description });
    return read.ok ? sketch(read.value) : read.problems;
  };

  test('below, between or above ingredients they are steps, and the list goes on', () => {
    expect(
      sketched(`Apricot squares (makes 16)
170 °C fan, 28 min
180 g oats
120 g dried apricots
Prep time: 15 min
60 g honey
Bake 28 min at 170 °C`),
    ).toEqual([
      '- dish Apricot squares ×16',
      '  180 g oats',
      '  120 g dried apricots',
      '  60 g honey',
      '  > 170 °C fan, 28 min',
      '  > Bake 28 min at 170 °C',
      'left description 5 prose',
    ]);
  });

  test('of no dish they are left out with their line, and the first paragraph stays words', () => {
    expect(
      sketched('Ready in 20 minutes!\n\nOven 220 °C\n\nSerious toast\n2 slices bread'),
    ).toEqual([
      'hook Ready in 20 minutes!',
      '- dish Serious toast',
      '  2 slices bread',
      'left description 3 prose',
    ]);
  });

  test('they have their degrees and minutes as steps', () => {
    const steps = (text: string) => {
      const from = { text: 'description', line: 1, startMs: null, words: text } as const;
      return saidSteps({ method: [{ text, from }] }, 'EU').map(({ step }) => [
        step.ovenMilliC,
        step.highS / 60,
      ]);
    };
    expect(steps('165 °C, 24 min')).toEqual([[165_000, 24]]);
    expect(steps('Oven: 190C for 25 min from frozen')).toEqual([[190_000, 25]]);
    expect(steps('210°C fan, 15 + 10 min')).toEqual([[210_000, 25]]);
    expect(steps('220°C fan')).toEqual([]);
  });
});
