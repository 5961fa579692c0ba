import { hasForm } from '#lib/publish/picture-text';

/** Words as they can be drawn, and what of them cannot. */
export interface DrawableWords {
  readonly text: string;
  /** Runs of letters without a form in the shipped fonts, as written. */
  readonly lost: readonly string[];
}

/** Signs without a form, as those that have one. */
const INSTEAD: Readonly<Record<string, string>> = {
  '\u2010': '-',
  '\u2011': '-',
  '\u2012': '–',
  '\u2015': '–',
  '\u2032': '’',
  '\u2033': '”',
  '\u2192': '–',
};

/** What is seen of nothing: joiners, directions, variants of a form. */
const UNSEEN = /[\p{Cf}\uFE00-\uFE0F]/u;

/**
 * Words in letters that the shipped fonts have: fractions and the like in other signs that mean the same, what has no
 * form at all left out and told. Where nothing is left to read, the words that stand for it.
 * @param instead as "dish 2"
 * @example drawable('⅓ cup oats 燕麦', 'ingredient 1') // { text: '1⁄3 cup oats', lost: ['燕麦'] }
 */
export function drawable(words: string, instead: string): DrawableWords {
  const lost: string[] = [];
  let run = '';
  let text = '';
  const endRun = () => {
    if (run !== '') lost.push(run.trim());
    run = '';
  };
  for (const letter of words.normalize('NFC')) {
    const drawn = formOf(letter);
    if (drawn === null) run += letter;
    else {
      if (drawn.trim() !== '') endRun();
      else if (run !== '') run += drawn;
      text += drawn;
    }
  }
  endRun();
  const kept = text
    .replace(/\(\s*\)|“\s*”/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/ (?=[,.;:!?)])/g, '')
    .trim();
  const isRead = /[\p{L}\p{N}]/u.test(kept);
  return { text: isRead ? kept : lost.length > 0 ? instead : kept, lost };
}

function formOf(letter: string): string | null {
  if (/\s|\p{Cc}/u.test(letter)) return ' ';
  if (hasForm(letter)) return letter;
  const other = INSTEAD[letter] ?? letter.normalize('NFKC');
  if (other !== letter && [...other].every(hasForm)) return /^\d/.test(other) ? ` ${other}` : other;
  return UNSEEN.test(letter) ? '' : null;
}
