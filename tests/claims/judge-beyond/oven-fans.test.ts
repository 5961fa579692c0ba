import { describe, expect, it } from 'vitest';
import { aContext, aStep, BAKE, judgeText, ROAST } from './invented-kitchen';

/*
 * That an oven with its fan is set 20 °C lower, and the table of gas marks, is common practice, no source; the verdicts
 * are the project's own definition (MODEL D.1, D.2).
 */

const baked = (title: string, milliC: number, note = '') =>
  aContext([
    {
      ...ROAST,
      steps: [aStep('only', title, { note, oven: { ovenId: null, milliC } })],
    },
    BAKE,
  ]);

const at = (text: string, context: ReturnType<typeof baked>) => {
  const { verdict, sayInstead, why } = judgeText(text, context, 'roast');
  return { verdict, sayInstead, why };
};

describe.each([
  ['190 °C / 170 °C fan / gas 5', 190_000],
  ['190C (170C fan), gas mark 5', 190_000],
  ['Bake: fan 170°C, 190°C without', 190_000],
  ['190/170 fan', 190_000],
  ['190C/fan 170C/gas 5, 40 mins', 190_000],
  // Kept with its fan: the same oven.
  ['170°C fan or 190°C conventional', 170_000],
  ['375°F / 340 °F convection, 190 °C / 170 °C fan', 190_000],
])('a step whose words give both settings: %s', (title, milliC) => {
  it.each([
    ['Oven at 170 °C fan', 'agrees'],
    ['Oven at 190 °C', 'agrees'],
    ['Oven at gas mark 5', 'agrees'],
    ['Oven at 190 °C fan', 'off'],
    ['Oven at 180 °C fan', 'off'],
    ['Oven at 150 °C fan', 'off'],
    ['Oven at 210 °C', 'off'],
    ['Oven at 180 °C', 'off'],
    ['Oven at gas mark 3', 'off'],
    // Without a word for the fan nobody knows whether it is meant.
    ['Oven at 170 °C', 'unknown'],
  ] as const)('%s: %s', (text, verdict) => {
    expect(at(text, baked(title, milliC))).toMatchObject({ verdict });
  });
});

describe('what to say instead of a wrong setting', () => {
  const context = baked('190 °C / 170 °C fan / gas 5', 190_000);

  it('is that of the same kind', () => {
    expect(at('Oven at 190 °C fan', context)).toEqual({
      verdict: 'off',
      sayInstead: '170 °C fan',
      why: 'your step “190 °C / 170 °C fan / gas 5” is at 170 °C with its fan',
    });
    expect(at('Oven at 210 °C', context)).toEqual({
      verdict: 'off',
      sayInstead: '190 °C',
      why: 'your step “190 °C / 170 °C fan / gas 5” is at 190 °C without a fan',
    });
  });

  it('keeps the word for a fan where the step alone says it', () => {
    const fan = baked('Bake at 170 °C fan', 170_000);
    expect(at('Oven at 190 °C fan', fan)).toMatchObject({
      verdict: 'off',
      sayInstead: '170 °C fan',
    });
    const none = baked('Bake at 190 °C without the fan', 190_000);
    expect(at('Oven at 190 °C fan', none)).toMatchObject({
      verdict: 'off',
      sayInstead: '170 °C fan',
    });
  });
});

describe('a step whose words give one setting, or old ones', () => {
  it.each([
    // 170 °C with the fan are 190 °C without, gas 5; gas 3 is 160 °C.
    ['Bake at 170 °C fan', 'Oven at gas mark 5', 'agrees'],
    ['Bake at 170 °C fan', 'Oven at gas mark 3', 'off'],
    ['Bake at 170 °C fan', 'Oven at 170 °C', 'agrees'],
    ['Bake at 170 °C fan', 'Oven at 190 °C', 'unknown'],
    ['Bake at 170 °C fan', 'Oven at 200 °C', 'off'],
    // The words are older than the number that is kept.
    ['210 °C / 190 °C fan', 'Oven at 190 °C fan', 'off'],
    ['210 °C / 190 °C fan', 'Oven at 170 °C fan', 'unknown'],
    // The fan cannot be the hotter one.
    ['170 °C / 190 °C fan', 'Oven at 190 °C fan', 'off'],
    ['170 °C / 190 °C fan', 'Oven at 170 °C fan', 'unknown'],
  ] as const)('%s, “%s”: %s', (title, text, verdict) => {
    expect(at(text, baked(title, 170_000))).toMatchObject({ verdict });
  });

  it('reads them in the note too', () => {
    const noted = baked('Roast the roots', 220_000, '220 °C, with a fan oven 200 °C fan');
    expect(at('Oven at 200 °C fan', noted).verdict).toBe('agrees');
    expect(at('Oven at 220 °C fan', noted).verdict).toBe('off');
  });
});
