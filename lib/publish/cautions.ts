import type { EpisodeFile } from '#lib/episode/schema';
import { printTo } from '#lib/units/print';
import { toFahrenheit } from '#lib/units/units';

/** Stands under every set of published figures. */
const figuresCaution = (sources: string) =>
  `Nutrition figures are computed from ${sources} and are for information only, not dietary or medical advice.`;

const CHECK_LABELS =
  'check the labels of what you use, and ask a clinician if you have an allergy.';

/** Stands beside every list of allergens. */
export const ALLERGEN_CAUTION = `This list may be incomplete: ${CHECK_LABELS}`;

/** Stands there instead while proposals wait for the person's word: what is left out then is known to be open. */
export const ALLERGENS_UNCHECKED = `Not all ingredients have been checked for allergens yet, so more may be in it: ${CHECK_LABELS}`;

const TEMPERATURE_CAUTION =
  'Follow your local food safety code; minimum temperatures as on the FoodSafety.gov chart.';

/**
 * The cautions an episode needs: inside temperatures that its steps name, with rest, then the general words.
 * @param sourcesNamed whether the same text names the sources of its figures
 * @example cautions(file)[0] // 'Tray-baked turkey meatloaf: 74 °C (165 °F) inside.'
 */
export function cautions(
  file: EpisodeFile,
  { sourcesNamed = true }: { readonly sourcesNamed?: boolean } = {},
): string[] {
  const temperatures = file.episode.segments.flatMap((segment) => {
    const cores = segment.steps.flatMap((step) => (step.coreMilliC === null ? [] : [step]));
    const hottest = cores.sort((a, b) => (b.coreMilliC ?? 0) - (a.coreMilliC ?? 0))[0];
    if (!hottest || hottest.coreMilliC === null) return [];
    const celsius = printTo(hottest.coreMilliC / 1000, 1);
    const fahrenheit = printTo(toFahrenheit(hottest.coreMilliC), 1);
    const rest = hottest.restS > 0 ? `, then rest ${printTo(hottest.restS / 60, 1)} min` : '';
    return [`${segment.title}: ${celsius} °C (${fahrenheit} °F) inside${rest}.`];
  });
  return [
    ...temperatures,
    ...(temperatures.length > 0 ? [TEMPERATURE_CAUTION] : []),
    figuresCaution(sourcesNamed ? 'the sources named' : 'food tables and package labels'),
  ];
}
