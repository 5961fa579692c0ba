import type { EpisodeFigures } from '#lib/figures/episode-figures';
import type {
  NumberScope,
  PublishedNumber,
  PublishedNumbers,
} from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import type { Nutrient } from '#lib/foods/nutrients';
import { markOf } from '#lib/publish/number-mark';

/** What energy is called: calories in the US, energy in the EU. */
export const ENERGY_WORD = { US: 'calories', EU: 'energy' } as const;

/** What the numbers of the day are of: all of it only where the person has said so. */
export const dayTitle = ({ dayIsWhole }: Pick<EpisodeFigures, 'dayIsWhole'>): string =>
  dayIsWhole ? 'The whole day' : 'The dishes shown';

/**
 * `846 kcal · 112 g protein · 41 g fat · 12 g carbohydrate`, with kJ first in the EU (Regulation (EU)
 * 1169/2011, Annex XV); a starred number adds up only by rounding.
 */
export function numbersLine(
  numbers: PublishedNumbers,
  scope: NumberScope,
  region: 'US' | 'EU',
): string {
  return lineNutrients(numbers, scope, region)
    .map((nutrient) => numberText(numbers(nutrient, scope), region))
    .join(' · ');
}

/** The nutrients that a line of numbers shows, in their order. */
export function lineNutrients(
  numbers: PublishedNumbers,
  scope: NumberScope,
  region: 'US' | 'EU',
): readonly Nutrient[] {
  const withKilojoules = region === 'EU' && numbers('energyKj', scope).number !== null;
  return [...(withKilojoules ? (['energyKj'] as const) : []), ...HEADLINE_NUTRIENTS];
}

function numberText(number: PublishedNumber, region: 'US' | 'EU'): string {
  const isEnergy = number.unit === 'kcal' || number.unit === 'kJ';
  if (number.number === null) return `${isEnergy ? ENERGY_WORD[region] : number.label} open`;
  const words = isEnergy ? '' : ` ${number.label}`;
  return `${number.text}${markOf(number)} ${number.unit}${words}`;
}

/** Why any headline number of a scope is not a plain number, or null if all are. */
export function openReason(numbers: PublishedNumbers, scope: NumberScope): string | null {
  const reasons = HEADLINE_NUTRIENTS.map((nutrient) => numbers(nutrient, scope))
    .filter((number) => number.status !== 'known')
    .map((number) => number.range.replace(/^at (least|most): /, ''));
  return reasons.length === 0 ? null : [...new Set(reasons)].join('; ');
}

export function capitalised(text: string): string {
  const [first = '', ...rest] = text;
  return first.toUpperCase() + rest.join('');
}
