import { holdAgainst, type SaidInterval } from '#lib/claims/said-interval';
import type { Hedge } from '#lib/claims/statement';
import type { Verdict } from '#lib/claims/judged';
import { figureStatus, type Figure } from '#lib/figures/figure';
import { judgeLimit, type LimitVerdict } from '#lib/figures/judge-limit';
import { settled } from '#lib/units/print';

/** A verdict on a figure; `possible` where it is off and the hard bounds would still allow it. */
export interface Held {
  readonly verdict: Verdict;
  readonly possible: boolean;
}

const BY_LIMIT: Readonly<Record<LimitVerdict, Verdict>> = {
  met: 'agrees',
  cannotTell: 'edge',
  missed: 'off',
  unknown: 'unknown',
};

/**
 * Holds what was said against a figure in the same unit (MODEL D.1, D.2). A figure that is known on one side alone
 * decides only where that side does.
 * @example holdFigure(covers640, 'none', { value: 612, likelyLow: 598, likelyHigh: 626, … }).verdict // 'off'
 */
export function holdFigure(said: SaidInterval, hedge: Hedge, figure: Figure): Held {
  const verdict = said.oneSided ? oneSided(said, hedge, figure) : ofPoint(said, figure);
  return { verdict, possible: verdict === 'off' && isAllowed(said, figure) };
}

function oneSided(said: SaidInterval, hedge: Hedge, figure: Figure): Verdict {
  if (hedge === 'atLeast') return BY_LIMIT[judgeLimit(figure, 'atLeast', said.from)];
  const verdict = BY_LIMIT[judgeLimit(figure, 'atMost', said.to)];
  if (!said.toOpen) return verdict;
  // 'Under 500' leaves 500 itself out.
  const [low, high] = [figure.likelyLow, figure.likelyHigh];
  if (low !== null && settled(low) >= said.to) return 'off';
  if (verdict !== 'agrees' || high === null || settled(high) < said.to) return verdict;
  return low === null ? 'unknown' : 'edge';
}

function ofPoint(said: SaidInterval, figure: Figure): Verdict {
  const { value, likelyLow, likelyHigh } = figure;
  const status = figureStatus(figure);
  if (status === 'open') return 'unknown';
  if (status === 'atLeast') {
    const above = likelyLow !== null && isBelow(said, likelyLow);
    return above ? 'off' : 'unknown';
  }
  if (status === 'atMost') {
    const below = likelyHigh !== null && isAbove(said, likelyHigh);
    return below ? 'off' : 'unknown';
  }
  if (likelyLow === null || likelyHigh === null) return 'unknown';
  return holdAgainst(said, { value, low: likelyLow, high: likelyHigh });
}

/** Whether some amount within the hard bounds is covered by what was said. */
export function isAllowed(
  said: SaidInterval,
  { low, high }: Pick<Figure, 'low' | 'high'>,
): boolean {
  return !(low !== null && isBelow(said, low)) && !(high !== null && isAbove(said, high));
}

/** All that was said lies below a value. */
function isBelow({ to, toOpen }: SaidInterval, of: number): boolean {
  const value = settled(of);
  return toOpen ? to <= value : to < value;
}

/** All that was said lies above a value. */
function isAbove({ from, fromOpen }: SaidInterval, of: number): boolean {
  const value = settled(of);
  return fromOpen ? from >= value : from > value;
}
