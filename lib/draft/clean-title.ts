import { withoutUnseen } from '#lib/episode/read-ingredient-clean';

/** Letters that a title holds at most, as in the file format. */
const LONGEST_TITLE = 160;

const EDGES = /^[\s*_#=~`>•–—|:;,.\-]+|[\s*_#=~`•–—|:;,\-]+$/g;
const PICTURES =
  /^[\p{Extended_Pictographic}\p{Emoji_Modifier}\ufe0f\u200d\s]+|[\p{Extended_Pictographic}\p{Emoji_Modifier}\ufe0f\u200d\s]+$/gu;
const NUMBERED = /^(?:recipe|dish|meal|no\.?|#)\s*\d{1,2}\s*[:.)–—-]\s*/i;

/**
 * A title in the words it was written in, without marks, pictures and numbering around them, as long as a title may be.
 * @example cleanTitle('## Recipe 1: Peanut tofu trays 🍜') // 'Peanut tofu trays'
 */
export function cleanTitle(text: string): string {
  const line = withoutUnseen(text).text.replace(/\s+/g, ' ');
  const bare = trimmed(trimmed(line).replace(NUMBERED, ''));
  return bare.length > LONGEST_TITLE ? cut(bare, LONGEST_TITLE) : bare;
}

function trimmed(text: string): string {
  let now = text;
  for (let time = 0; time < 3; time += 1) now = now.replace(EDGES, '').replace(PICTURES, '');
  return now;
}

/** Words up to a length, cut between two of them, and never within a character. */
export function cut(text: string, most: number): string {
  if (text.length <= most) return text;
  const head = text.slice(0, most - 1).replace(/[\uD800-\uDBFF]$/, '');
  return `${head.slice(0, Math.max(head.lastIndexOf(' '), most / 2)).trimEnd()}…`;
}
