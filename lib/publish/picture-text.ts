import { SLATE_ADVANCES, TEXT_ADVANCES, type GlyphAdvances } from '#lib/publish/glyph-advances';

/** The two faces of pictures: text and numbers, and the lettering of the slate. */
export type Face = 'text' | 'slate';

/** What is in no font counts as wider than any letter. */
const WIDEST = 1400;

const advancesOf = (table: GlyphAdvances): ReadonlyMap<string, number> =>
  new Map(table.flatMap(([advance, letters]) => [...letters].map((each) => [each, advance])));

const ADVANCES: Readonly<Record<Face, ReadonlyMap<string, number>>> = {
  text: advancesOf(TEXT_ADVANCES),
  slate: advancesOf(SLATE_ADVANCES),
};

/** Whether both faces have a form of a letter. `hasForm('⅓')` → false */
export function hasForm(letter: string): boolean {
  return ADVANCES.text.has(letter) && ADVANCES.slate.has(letter);
}

/**
 * How wide some words are at most, in the units of the size. Other scripts count as the widest letter.
 * @example widthAtMost('ill', 100, 'text') // 90.9
 */
export function widthAtMost(words: string, size: number, face: Face): number {
  let permille = 0;
  for (const letter of words) permille += ADVANCES[face].get(letter) ?? WIDEST;
  return (permille * size) / 1000;
}

/** Where lines of a picture are set. */
export interface Setting {
  readonly size: number;
  readonly face: Face;
  readonly width: number;
  readonly mostLines: number;
}

/**
 * Words in lines that fit a width; what does not fit in as many lines as there may be is left out behind '…'.
 * Law: no line is wider than the width.
 */
export function wrapped(words: string, setting: Setting): string[] {
  const { size, face, width, mostLines } = setting;
  const fits = (line: string) => widthAtMost(line, size, face) <= width;
  const lines: string[] = [];
  let line = '';
  for (const word of words.split(/\s+/).filter((each) => each !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = fits(word) ? word : shortened(word, fits);
    if (lines.length === mostLines) break;
  }
  if (lines.length < mostLines) return line === '' ? lines : [...lines, line];
  const last = lines[mostLines - 1] ?? '';
  return [...lines.slice(0, mostLines - 1), shortened(`${last} `, fits)];
}

/** As much of some words as fits, with '…' behind it. */
function shortened(words: string, fits: (line: string) => boolean): string {
  let kept = [...words.trimEnd()];
  while (kept.length > 0 && !fits(`${kept.join('')}…`)) kept = kept.slice(0, -1);
  return `${kept.join('').trimEnd()}…`;
}

/** Text that may stand in XML: its marks as references, characters that XML has not left out (XML 1.0, 2.2). */
export function xmlText(text: string): string {
  return text
    .replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g, '')
    .replace(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
