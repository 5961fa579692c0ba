/** The two faces of pictures: text and numbers, and the lettering of the slate. */
export type Face = 'text' | 'slate';

/**
 * Advances of letters in thousandths of the type's size, each class's widest in Atkinson Hyperlegible Next SemiBold, as
 * measured; what is in no class is a capital or wider than one.
 */
const CLASSES: readonly (readonly [letters: string, advance: number])[] = [
  [" !',.:;`|ijl", 310],
  ['"()-/I[]\\_f{}rt1', 440],
  ['*?<>^acehknosuvxyz2375468FJLLdgbpqE9$+ST0PZBR–“”‘’', 650],
  ['ACDGHKNOQUVXY#=&w@–', 780],
];
const WIDEST = 970;
/** Barlow Condensed is narrower, letter by letter, by at least so much. */
const SLATE_PERMILLE = 900;

const ADVANCES: ReadonlyMap<string, number> = new Map(
  [...CLASSES]
    .reverse()
    .flatMap(([letters, advance]) => [...letters].map((letter) => [letter, advance] as const)),
);

/**
 * How wide some words are at most, in the units of the size. Other scripts count as the widest letter.
 * @example widthAtMost('ill', 100, 'text') // 93
 */
export function widthAtMost(words: string, size: number, face: Face): number {
  let permille = 0;
  for (const letter of words) permille += ADVANCES.get(letter) ?? WIDEST;
  return (permille * size * (face === 'slate' ? SLATE_PERMILLE : 1000)) / 1_000_000;
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
  return (
    text
      // eslint-disable-next-line no-control-regex -- these are what is left out
      .replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g, '')
      .replace(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g, '')
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
      .replaceAll('"', '&quot;')
  );
}
