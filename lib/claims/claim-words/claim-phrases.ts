import type { Region } from '#lib/figures/line-parts';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import type { ClaimLevel } from './claim-rule';

const SPOKEN: Partial<Readonly<Record<Nutrient, string>>> = {
  saturated: 'saturated fat',
  vitaminARae: 'vitamin A',
  vitaminDMicrograms: 'vitamin D',
  folateDfe: 'folate',
  carbohydrate: 'carbs',
};

/** What a nutrient is called in a claim: calories in the US, energy in the EU. */
function claimNoun(nutrient: Nutrient, region: Region): string {
  if (nutrient === 'energyKcal') return region === 'US' ? 'calorie' : 'energy';
  if (nutrient === 'fibre') return region === 'US' ? 'fiber' : 'fibre';
  if (nutrient === 'sugars') return region === 'US' ? 'sugar' : 'sugars';
  return SPOKEN[nutrient] ?? NUTRIENTS[nutrient].label;
}

/**
 * A claim as it is said.
 * @example claimPhrase('source', 'protein', 'EU') // 'source of protein'
 */
export function claimPhrase(level: ClaimLevel, nutrient: Nutrient | null, region: Region): string {
  const noun = nutrient === null ? '' : claimNoun(nutrient, region);
  switch (level) {
    case 'high':
      return nutrient === 'protein' || nutrient === 'fibre' ? `high ${noun}` : `high in ${noun}`;
    case 'source':
      return region === 'US' ? `good source of ${noun}` : `source of ${noun}`;
    case 'low':
      return `low ${noun}`;
    case 'veryLow':
      return `very low ${noun}`;
    case 'free':
      return `${noun} free`;
    case 'noAdded':
      return `no added ${noun}`;
    case 'reduced':
      return `reduced ${noun}`;
    case 'percentFree':
      return `% ${noun} free`;
    case 'extraLean':
      return 'extra lean';
    case 'light':
    case 'lean':
      return level;
  }
}

/** Weaker words than a claim, strongest first. */
export const WEAKER: Partial<Readonly<Record<ClaimLevel, readonly ClaimLevel[]>>> = {
  high: ['source'],
  free: ['veryLow', 'low'],
  veryLow: ['low'],
  extraLean: ['lean'],
  percentFree: [],
};
