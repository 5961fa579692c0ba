import { scopeText } from '#lib/figures/breakdown-scope';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';

/** Address of the breakdown of a number. */
export function breakdownHref(episodeId: string, scope: NumberScope, nutrient: Nutrient): string {
  const of = encodeURIComponent(scopeText(scope)).replace('%3A', ':');
  return `/episodes/${encodeURIComponent(episodeId)}/breakdown/${of}/${nutrient}`;
}

/** The same at an ingredient's row. */
export function breakdownRowHref(
  episodeId: string,
  scope: NumberScope,
  nutrient: Nutrient,
  lineId: string,
): string {
  return `${breakdownHref(episodeId, scope, nutrient)}#line-${encodeURIComponent(lineId)}`;
}
