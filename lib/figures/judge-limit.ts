import { figureStatus, type Figure } from '#lib/figures/figure';

export type LimitVerdict = 'met' | 'cannotTell' | 'missed' | 'unknown';

/**
 * Holds a figure against a one-sided limit: targets, claim words and one-sided statements share this.
 * Met if the whole likely range satisfies it; missed if the value fails and the likely range lies wholly
 * outside; otherwise it cannot tell. A one-sided figure decides only where its known side does.
 * @param amount the limit in the figure's unit
 * @example judgeLimit(protein, 'atLeast', 70) // 'met' where the likely range starts at 70 or above
 */
export function judgeLimit(
  figure: Figure,
  relation: 'atLeast' | 'atMost',
  amount: number,
): LimitVerdict {
  const low = figure.likelyLow;
  const high = figure.likelyHigh;
  const meetsAt = (value: number) => (relation === 'atLeast' ? value >= amount : value <= amount);
  switch (figureStatus(figure)) {
    case 'open':
      return 'unknown';
    case 'atLeast':
      if (low === null) return 'unknown';
      if (relation === 'atLeast') return low >= amount ? 'met' : 'unknown';
      return low > amount ? 'missed' : 'unknown';
    case 'atMost':
      if (high === null) return 'unknown';
      if (relation === 'atMost') return high <= amount ? 'met' : 'unknown';
      return high < amount ? 'missed' : 'unknown';
    case 'known':
      if (low === null || high === null) return 'unknown';
      if (meetsAt(low) && meetsAt(high)) return 'met';
      if (!meetsAt(figure.value) && !meetsAt(low) && !meetsAt(high)) return 'missed';
      return 'cannotTell';
  }
}
