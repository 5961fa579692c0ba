/** The two faces of pictures: text and numbers, and the lettering of the slate. */
export type Face = 'text' | 'slate';

type Classes = readonly (readonly [letters: string, advance: number])[];

/**
 * Advances of letters in thousandths of the type's size: each class's widest in Atkinson Hyperlegible Next SemiBold and
 * in Barlow Condensed SemiBold, as measured. What is in no class counts as the widest letter.
 */
const TEXT: Classes = [
  [" !',.:;`|ijl·", 310],
  ['"()-/I[]\\_f{}rt1', 440],
  ['*?<>^acehknosuvxyz2375468FJLLdgbpqE9$+ST0PZBR–“”‘’', 650],
  ['ACDGHKNOQUVXY#=&w@', 780],
];
const SLATE: Classes = [
  [" |,l.`j;Ii:'·", 260],
  ['1!()tf-"r{}[]', 340],
  ['*zs/7\\?FZ^_y9Lcvx$23568ESaegko+<=>JbdhnpquQT04BCGPRXYDOV–“”‘’', 480],
  ['AHKU~NM&w', 610],
];
const WIDEST = 970;

const advancesOf = (classes: Classes): ReadonlyMap<string, number> =>
  new Map(classes.flatMap(([letters, advance]) => [...letters].map((each) => [each, advance])));

const ADVANCES: Readonly<Record<Face, ReadonlyMap<string, number>>> = {
  text: advancesOf(TEXT),
  slate: advancesOf(SLATE),
};

/**
 * How wide some words are at most, in the units of the size. Other scripts count as the widest letter.
 * @example widthAtMost('ill', 100, 'text') // 93
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
