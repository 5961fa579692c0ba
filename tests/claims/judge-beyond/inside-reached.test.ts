import { describe, expect, it } from 'vitest';
import { readStatements } from '#lib/claims/read-statements';
import { aContext, aStep, judgeText, POULTRY_CAUTION, ROAST } from './invented-kitchen';

/* The published least is of FoodSafety.gov; that 120 to 212 °F are read as food's is common practice, no source. */

const kindOf = (text: string) =>
  readStatements(text, { form: 'captions' }).find(({ kind }) => kind.endsWith('Temperature'))?.kind;

describe('degrees that something gets to', () => {
  it.each([
    [
      'brown the turkey until no pink is left and make sure it gets to 165 degrees',
      'insideTemperature',
    ],
    ['stir the sausages about till they have come up to 160 degrees', 'insideTemperature'],
    ['I check the thighs every time so it gets up to at least 170 degrees', 'insideTemperature'],
    ['chicken goes into the oven and once that gets to 200 degrees', 'ovenTemperature'],
    ['the chicken is in there at 200 degrees', 'ovenTemperature'],
    ['the caramel gets to 170 degrees', 'ovenTemperature'],
    ['let the chicken go until the grill gets to 240 degrees', 'ovenTemperature'],
  ] as const)('%s: %s', (text, kind) => {
    expect(kindOf(text)).toBe(kind);
  });
});

describe('an inside temperature that no step has', () => {
  const poultry = {
    ingredients: [{ text: '220 g chicken breast, diced', foods: ['Chicken, breast, raw'] }],
    milliC: 73_889,
    fahrenheit: 165,
    caution: POULTRY_CAUTION,
  };
  const context = aContext(
    [{ ...ROAST, steps: [aStep('fry', 'Fry it all')] }],
    [{ inside: [poultry] }],
  );
  const at = (text: string) => judgeText(text, context, 'roast', 'captions');

  it('is told with what is published, and never agrees', () => {
    expect(at('fry the chicken until it gets to 165 degrees')).toMatchObject({
      verdict: 'unknown',
      why: `can’t say: no step of Roast chicken bowl has an inside temperature, and none was read. ${POULTRY_CAUTION}`,
    });
  });

  it('is off below what is published', () => {
    expect(at('fry the chicken until it gets to 150 degrees')).toMatchObject({
      verdict: 'off',
      sayInstead: 'at least 165 °F',
    });
  });
});
