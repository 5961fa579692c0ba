import type { CardSpace, EveningBefore, WeighOut } from '#lib/overview/evening-before';
import { daysBefore, type EveningStep, type EveningTie } from '#lib/shoot/evening';
import { clockText, minutesText } from '#lib/shoot/day-words';
import { pinTimeWords } from '#lib/shoot/pins';
import { buyText, gramsUp } from '#lib/shopping/shopping-text';
import { printDay } from '#lib/units/print-date';
import { printGrams, printTo } from '#lib/units/print';

const DAY_MIN = 1440;

/**
 * A minute of the filming day as said the evening before: `'21:55'`; `'06:30 on the day'`; further off with its date.
 */
export function eveningClock(minute: number, eveningDate: string): string {
  const days = Math.floor(minute / DAY_MIN);
  const clock = clockText(minute - days * DAY_MIN);
  if (days === -1) return clock;
  return days === 0
    ? `${clock} on the day`
    : `${clock}, ${printDay(daysBefore(eveningDate, -1 - days))}`;
}

/** What a step of the evening is for, a sentence for each thing that waits for it. */
export function tieWords(tie: EveningTie): string {
  const least = tie.leastMin > 0 ? [`at least ${minutesText(tie.leastMin)}`] : [];
  const most = tie.mostMin === null ? [] : [`at most ${minutesText(tie.mostMin)}`];
  const lag = [...least, ...most].join(' and ');
  const reason = tie.reason === '' || tie.reason === 'as written' ? '' : `: ${tie.reason}`;
  const at = tie.atMin >= 0 ? ` at ${clockText(tie.atMin)}` : '';
  return `${lag === '' ? 'before' : `${lag} before`} ${tie.title}${at}${reason}`;
}

/** Said of a step that would be begun too early for what waits for it; null where it would not. */
export function tooEarlyWords(step: EveningStep, eveningDate: string): string | null {
  if (!step.tooEarly || step.notBeforeMin === null) return null;
  return `Too early for what waits for it: not before ${eveningClock(step.notBeforeMin, eveningDate)}. Do it then, or allow more time between the two.`;
}

/** Said of a step that is tied to a clock time of the filming day; null where it is not. */
export function pinnedWords({ pins }: Pick<EveningStep, 'pins'>): string | null {
  if (pins.length === 0) return null;
  return `It is tied to a time of the filming day (${pins.map(pinTimeWords).join('; ')}): that does not hold, since it is done before.`;
}

/** An ingredient to weigh out: `'150 g pearl barley'`; grams are added where the words have none. */
export function weighOutWords({ line, massMg, saysSo }: WeighOut): string {
  return saysSo ? line : `${line}: ${printGrams(massMg)} g`;
}

/** What the pantry is short of: `'Onions, raw: buy 110 g'`. */
export function shortWords(item: EveningBefore['short']['items'][number]): string {
  const isOpen = item.buyMg === 0 && item.needMl === null && item.open.length > 0;
  const amount = isOpen ? `amount open: ${item.open.join(', ')}` : buyText(item);
  const stock = item.stockMg > 0 ? `, ${gramsUp(item.stockMg)} there` : '';
  return `${item.name}: ${amount}${stock}`;
}

/** Room on the cards, rounded up: `'61 min on camera at 100 Mbit/s: 45.8 GB for one take of each'`. */
export function cardWords({ seconds, bytes }: CardSpace, mbps: number | null): string {
  if (seconds === 0) {
    return 'Cards: no step is marked as on camera, so nobody can say how much room they need.';
  }
  const minutes = minutesText(Math.ceil(seconds / 60));
  if (bytes === null || mbps === null) {
    return `Cards: ${minutes} on camera. Say in the kitchen how many Mbit/s your camera writes, and the room is here.`;
  }
  const gigabytes = printTo(Math.ceil(bytes / 100_000_000) / 10, 0.1);
  return `Cards: ${minutes} on camera at ${mbps} Mbit/s, ${gigabytes} GB free for one take of each; as much again for a second.`;
}

/** What was worn, or that nobody said. */
export function outfitWords(outfit: string): string {
  return outfit === '' ? 'Outfit: not said yet' : `Outfit: ${outfit}`;
}

/** Empty pans and bowls that were weighed, or what to do about it. */
export function tareWords(tares: EveningBefore['tares']): readonly string[] {
  const known = tares.map(({ dish, massMg }) => `${dish}: weighed empty, ${printGrams(massMg)} g`);
  return known.length > 0
    ? known
    : ['Weigh your pans, trays and bowls empty, and write the grams on each.'];
}

/** What is done each time before filming. */
export const EVERY_TIME: readonly string[] = [
  'Charge the batteries of camera, microphone, light and phone',
  'Empty the cards',
  'Clear the counter and the sink',
  'Scale: batteries, and a spare set beside it',
];
