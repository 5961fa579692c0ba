import { REFERENCE, spelledOut, TAGS } from '#lib/cut/caption-words';

/** A UTF-16 unit that a cue says, and the stretch of its text that says it. */
export interface CharacterPlace {
  readonly char: string;
  readonly from: number;
  readonly to: number;
}

/**
 * The characters of what a cue says, line by line, each with its place in the cue's text: tags stand between them, a
 * reference is one of them, several blanks are one. Lines without words are not there.
 * Law: put together they are the cue's words, as `captionWords` has them.
 * @param text the cue's lines as written, with tags and references
 * @example characterPlaces('<b>6</b>4')[0] // [{ char: '6', from: 3, to: 4 }, { char: '4', from: 8, to: 9 }]
 */
export function characterPlaces(text: string): CharacterPlace[][] {
  const lines: CharacterPlace[][] = [[]];
  for (const place of piecesOf(text)) {
    if (place.char === '\n') lines.push([]);
    else lines.at(-1)?.push(place);
  }
  return lines.map(trimmed).filter((line) => line.length > 0);
}

/** Each unit that is said, without tags and marks of direction; those of a reference have one place. */
function* piecesOf(text: string): Generator<CharacterPlace> {
  let at = 0;
  while (at < text.length) {
    const first = text[at] ?? '';
    if (first === '<' || first === '{') {
      const skipped = lengthAt(TAG_HERE, text, at);
      at += skipped;
      if (skipped > 0) continue;
    }
    const length = first === '&' ? Math.max(1, lengthAt(REFERENCE_HERE, text, at)) : 1;
    const said = spelledOut(text.slice(at, at + length));
    for (const char of said.split('')) yield { char, from: at, to: at + length };
    at += length;
  }
}

const TAG_HERE = new RegExp(TAGS.source, 'iy');
const REFERENCE_HERE = new RegExp(REFERENCE.source, 'iy');

function lengthAt(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0].length ?? 0;
}

const BLANK = /^[ \t\u00A0]$/;

/** Blanks at the ends are none, several are one. */
function trimmed(line: readonly CharacterPlace[]): CharacterPlace[] {
  const kept: CharacterPlace[] = [];
  for (const place of line) {
    const before = kept.at(-1);
    if (!BLANK.test(place.char)) kept.push(place);
    else if (before && before.char === ' ') kept[kept.length - 1] = { ...before, to: place.to };
    else if (before) kept.push({ ...place, char: ' ' });
  }
  if (kept.at(-1)?.char === ' ') kept.pop();
  return kept;
}
