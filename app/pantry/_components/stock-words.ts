import type { PantryFood } from '#lib/episode/stock-schema';
import { sourceText } from '#lib/safety/caution';
import type { ColdStorage } from '#lib/safety/cold-storage';
import { printDay } from '#lib/units/print-date';

const WORDS = { have: 'There is enough', notEnough: 'Not enough', none: 'None' } as const;

/** What was said of a food at home, and when: `'Not enough, you said on Sat 5 Dec.'` */
export function answerWords(said: PantryFood | null): string {
  const answer = said?.answer;
  if (!answer) return 'Nobody has said yet. Shopping then buys all that is needed.';
  const remark = answer.remark === '' ? '' : ` (${answer.remark})`;
  return `${WORDS[answer.is]}, you said on ${printDay(answer.on)}${remark}.`;
}

/**
 * How long a food keeps once opened, and who says so: the person, else the published chart.
 * `keepsWords(null, null)` → `'Nobody says how long it keeps once opened'`
 */
export function keepsWords(opened: PantryFood['opened'], chart: ColdStorage | null): string {
  if (opened) {
    const days = opened.days === 1 ? 'a day' : `${opened.days} days`;
    return `Keeps ${days} once opened (${opened.source || 'you said so'})`;
  }
  if (chart === null) return 'Nobody says how long it keeps once opened';
  const { least, most, unit } = chart.refrigerator;
  const span = least === most ? `${most} ${unit}` : `${least} to ${most} ${unit}`;
  return `Keeps ${span} in the refrigerator (${chart.name}; ${sourceText(chart.source)})`;
}
