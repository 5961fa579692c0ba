import type { Card } from '#lib/publish/cards/card';
import { drawable } from '#lib/publish/cards/drawable';

/** The words of a card. */
export type CardWords = Pick<Card, 'kicker' | 'title' | 'say' | 'change' | 'rows' | 'notes'>;

/**
 * The words of a card in letters that the shipped fonts have, and what had none.
 * @param called what stands for a title of which nothing is left: "dish 2"
 */
export function readable(of: CardWords, called: string): CardWords & Pick<Card, 'lost'> {
  const lost: string[] = [];
  const read = (words: string, instead: string): string => {
    const { text, lost: missing } = drawable(words, instead);
    lost.push(...missing);
    return text;
  };
  const { kicker, title, say, change, rows, notes } = of;
  const words = {
    kicker: read(kicker, ''),
    title: read(title, called),
    say: read(say, ''),
    change: change && {
      before: read(change.before, 'open'),
      after: read(change.after, 'open'),
      unit: read(change.unit, ''),
    },
    rows: rows.map((row, index) => ({
      words: read(row.words, `line ${index + 1}`),
      amount: read(row.amount, ''),
    })),
    notes: notes.map((note) => read(note, '')),
  };
  return { ...words, lost: [...new Set(lost)] };
}
