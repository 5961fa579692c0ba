import { oneOf } from './uniform';

/**
 * What a panel prints of a true amount, by the rule's words and by no means of lib; where the rule leaves a choice
 * (a tie, a "may"), any of them.
 * US: 21 CFR 101.9(c)(1) to (c)(7); EU: guidance on tolerances of 2012 (from memory).
 */
export function printPanel(
  rule: 'us' | 'eu',
  nutrient: 'energyKcal' | 'fat' | 'protein' | 'sodium',
  amount: number,
  random: () => number,
): string {
  if (rule === 'eu') {
    if (nutrient === 'energyKcal' || nutrient === 'sodium') return String(Math.round(amount));
    if (amount <= 0.5) return oneOf(random, ['0', '<0.5', amount.toFixed(1)]);
    // 9.96 is rounded to tenths and then reads 10.0, which is printed 10.
    const tenths = Math.round(amount * 10) / 10;
    return tenths < 10 ? tenths.toFixed(1) : String(Math.round(amount));
  }
  switch (nutrient) {
    case 'energyKcal':
      if (amount < 5) return oneOf(random, ['0', String(5 * Math.round(amount / 5))]);
      return String(amount <= 50 ? 5 * Math.round(amount / 5) : 10 * Math.round(amount / 10));
    case 'fat':
      if (amount < 0.5) return '0';
      return amount < 5 ? String(Math.round(amount * 2) / 2) : String(Math.round(amount));
    case 'sodium':
      if (amount < 5) return '0';
      return String(amount <= 140 ? 5 * Math.round(amount / 5) : 10 * Math.round(amount / 10));
    case 'protein':
      if (amount < 0.5) return oneOf(random, ['0', '<1']);
      return amount < 1 ? oneOf(random, ['1', '<1']) : String(Math.round(amount));
  }
}
