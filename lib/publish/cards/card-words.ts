import { STANDING_MARK, type Card } from '#lib/publish/cards/card';
import { numbersInLine } from '#lib/publish/cards/card-number';

/** What a card is, in words for a list. */
export const KIND_WORDS: Readonly<Record<Card['kind'], string>> = {
  dish: 'numbers',
  day: 'day total',
  ingredients: 'ingredients',
  step: 'step',
  swap: 'swap',
  correction: 'correction',
  thumbnail: 'number for the thumbnail',
};

/** All that a card says, as one text for those who don't see it. */
export function cardWords(card: Card): string {
  const { kicker, title, lead, others, change, say, rows, notes, standing } = card;
  const numbers = lead ? numbersInLine({ lead, others }) : '';
  const changed = change
    ? `${change.after} ${change.unit}, not ${change.before} ${change.unit}`.replaceAll(' ,', ',')
    : '';
  const list = rows.map(({ words, amount }) => (amount === '' ? words : `${words}: ${amount}`));
  return [
    ...[kicker, title, numbers, changed, say].filter((part) => part !== ''),
    ...list,
    ...notes,
    STANDING_MARK[standing] ?? '',
  ]
    .filter((part) => part !== '')
    .join('; ');
}
