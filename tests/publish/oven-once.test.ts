import { describe, expect, it } from 'vitest';
import { description } from '#lib/publish/description';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { aStep } from '../claims/judge-beyond/invented-kitchen';

/* 190 °C are 374 °F by NIST SP 811, Appendix B; that an oven is told once is the project's own rule, no source. */

const plums = aFood('plums', { energyKcal: '50' }, { name: 'Plums' });
const told = (title: string, method: string) => {
  const recipe = { ...aRecipe('r', [grams('800 g plums', 'plums', 800)]), method };
  const steps = [aStep('s', title, { oven: { ovenId: null, milliC: 190_000 } })];
  return description(aFile([aDish('d', recipe, { title: 'Plum crumble', steps })], [plums])).text;
};

describe('the oven of a dish in its description', () => {
  it('is not told again where the method writes both of its settings', () => {
    const text = told('190 °C / 170 °C fan / gas 5', '190 °C / 170 °C fan / gas 5, 40 mins');
    expect(text).toContain('190 °C / 170 °C fan / gas 5, 40 mins');
    expect(text).not.toContain('Oven:');
  });

  it.each([
    ['190 °C / 170 °C fan / gas 5', 'Bake it until it bubbles.'],
    ['Bake at 190 °C', 'Bake at 190 °C until it bubbles.'],
  ])('is told with both scales beside other words: %s; %s', (title, method) => {
    expect(told(title, method)).toContain('Oven: 190 °C (374 °F)');
  });

  it('is told where the words are older than what is set', () => {
    const title = '220 °C / 200 °C fan';
    expect(told(title, `${title}, 40 mins`)).toContain('Oven: 190 °C (374 °F)');
  });
});
