import { bulletLength, withoutMarkup, withoutUnseen } from '#lib/episode/read-ingredient-clean';
import { plainWidth } from '#lib/episode/read-ingredient-tokens';
import type { Stretch } from '#lib/method/method-step';

/** Far more than a method has: a longer text was pasted by mistake. In characters. */
export const LONGEST_METHOD = 20_000;
/** So many sentences are read at most; a dish has at most 200 steps. */
export const MOST_SENTENCES = 200;
/** A sentence is cut here: no person writes a longer one. In characters. */
const LONGEST_SENTENCE = 600;

/** The text as it is read: without markup and what nobody sees, degrees by one sign. */
export function cleanMethod(text: string): string {
  return plainWidth(withoutUnseen(withoutMarkup(text).text).text)
    .replace(/[º˚]/g, '°')
    .replace(/℃/g, '°C')
    .replace(/℉/g, '°F')
    .replace(/\r\n?/g, '\n')
    .replace(/[^\S\n]+/g, ' ');
}

/** Short forms that end in a full stop without ending the sentence. */
const SHORT =
  /(?:^|[\s(\d])(?:min|mins|hr|hrs|sec|secs|approx|ca|no|tbsp|tsp|oz|lb|lbs|deg|temp|e\.g|i\.e|cm|in|st|vs)\.$/i;

/**
 * Where the sentences of a cleaned text stand, without numbering and bullets. A full stop after 'min.' ends one
 * only where a capital follows. `sentencesOf('1. Mix. Bake for 20 min. at 180C.')` → 'Mix.', 'Bake for 20 min. at 180C.'
 */
export function sentencesOf(text: string): Stretch[] {
  const found: Stretch[] = [];
  let lineStart = 0;
  for (const line of text.split('\n')) {
    const lead = bulletLength(line);
    const heading = /^(?:step|method|stage)\s*\d*\s*[:.)–-]\s*/i.exec(line.slice(lead));
    let start = lead + (heading?.[0].length ?? 0);
    for (let at = start; at <= line.length; at += 1) {
      const sign = line[at] ?? '\n';
      const over = at - start >= LONGEST_SENTENCE && sign === ' ';
      if (sign !== '\n' && !over && !endsAt(line, at, start)) continue;
      const end = Math.min(at + 1, line.length);
      const words = line.slice(start, end);
      const blank = words.length - words.trimStart().length;
      if (/[\p{L}\p{N}]/u.test(words)) {
        found.push({
          start: lineStart + start + blank,
          end: lineStart + start + words.trimEnd().length,
        });
      }
      start = at + 1;
    }
    lineStart += line.length + 1;
  }
  return found;
}

function endsAt(line: string, at: number, start: number): boolean {
  const sign = line[at] ?? '';
  if (!/[.!?]/.test(sign)) return false;
  const rest = line.slice(at + 1, at + 4);
  if (rest !== '' && !/^["'”’)]?\s/.test(rest)) return false;
  const short = SHORT.test(line.slice(Math.max(start, at - 8), at + 1));
  return !short || /^\s+\p{Lu}/u.test(rest);
}
