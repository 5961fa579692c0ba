import type { Episode, Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import { FOLLOW_LOCAL_CODE, sourceText } from '#lib/safety/caution';
import { insideTemperatureCaution } from '#lib/safety/general-cautions';
import { strictestRow } from '#lib/shoot/day-cautions';
import type { FoodsAndRecipes } from '#lib/shoot/may-go-in-raw';
import { toFahrenheit } from '#lib/units/units';

/** The least inside temperature of a step: its own, or the published one for a raw food of its dish if that is more. */
export interface LeastInside {
  readonly milliC: number;
  readonly restS: number;
  /** What the chart says, and who publishes it; null where the chart has no row for the dish. */
  readonly caution: string | null;
}

/** The least that a step must reach inside; null for a step that reaches none. */
export function leastInside(
  file: FoodsAndRecipes,
  segment: Segment,
  step: Step,
): LeastInside | null {
  if (step.coreMilliC === null) return null;
  const strictest = strictestRow(file, segment);
  const own = { milliC: step.coreMilliC, restS: step.restS };
  if (strictest === null) return { ...own, caution: null };
  const { text, source } = insideTemperatureCaution(strictest);
  return {
    milliC: Math.max(own.milliC, strictest.milliC),
    restS: Math.max(own.restS, strictest.milliC >= own.milliC ? strictest.restS : 0),
    caution: `${text} (${sourceText(source)}) ${FOLLOW_LOCAL_CODE}`,
  };
}

/** `'Inside at least 73.9 °C, then 3 min rest.'`, never below what it stands for. */
export function leastWords({ milliC, restS }: LeastInside, region: Episode['region']): string {
  const rest = restS > 0 ? `, then ${Math.ceil(restS / 60)} min rest` : '';
  return `Inside at least ${degrees(milliC, region, Math.ceil)}${rest}.`;
}

/**
 * What a reading says: `'74.2 °C: reached.'`, or by how much it is short. A reading is told no higher than it was.
 */
export function readingWords(
  least: LeastInside,
  milliC: number,
  region: Episode['region'],
): { readonly reached: boolean; readonly words: string } {
  const read = degrees(milliC, region, Math.floor);
  const reached = milliC >= least.milliC;
  if (!reached) {
    const short = degreesApart(least.milliC - milliC, region);
    return { reached, words: `${read}: not reached, ${short} short. Go on, and read again.` };
  }
  const rest = least.restS > 0 ? ` Now rest it for ${Math.ceil(least.restS / 60)} min.` : '';
  return { reached, words: `${read}: reached.${rest}` };
}

type Round = (value: number) => number;

function degrees(milliC: number, region: Episode['region'], round: Round): string {
  // A hair off a whole tenth by the conversion is that tenth.
  const tenths = (region === 'US' ? toFahrenheit(milliC) : milliC / 1000) * 10;
  const near = Math.round(tenths);
  const shown = Math.abs(tenths - near) < 0.02 ? near : round(tenths);
  return `${shown / 10} °${region === 'US' ? 'F' : 'C'}`;
}

function degreesApart(milliC: number, region: Episode['region']): string {
  const apart = region === 'US' ? (milliC * 9) / 5000 : milliC / 1000;
  return `${Math.ceil(apart * 10 - 0.02) / 10} °${region === 'US' ? 'F' : 'C'}`;
}
