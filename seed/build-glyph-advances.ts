import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
import { fontAdvances } from './font-advances';

/**
 * Writes `lib/publish/glyph-advances.ts` anew from the two font files: `tsx seed/build-glyph-advances.ts`, then
 * `npm run format`. Pairs that are set wider than their letters' advances are measured by drawing them.
 */
const FONTS = [
  {
    name: 'TEXT_ADVANCES',
    said: 'Atkinson Hyperlegible Next SemiBold',
    family: 'Atkinson Hyperlegible Next',
    file: 'atkinson-hyperlegible-next/600SemiBold/AtkinsonHyperlegibleNext_600SemiBold.ttf',
  },
  {
    name: 'SLATE_ADVANCES',
    said: 'Barlow Condensed SemiBold',
    family: 'Barlow Condensed',
    file: 'barlow-condensed/600SemiBold/BarlowCondensed_600SemiBold.ttf',
  },
] as const;

/** Combining marks are set over a letter and are never looked at alone. */
const isMark = (letter: string) => /\p{M}/u.test(letter);

function widened(family: string, file: string, letters: readonly string[]): Map<string, number> {
  const drawn = (text: string): number => {
    const safe = text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="9000" height="9"><text font-family="${family}" font-weight="600" font-size="1000" xml:space="preserve">H${safe}H</text></svg>`;
    const { width } =
      new Resvg(svg, { font: { fontFiles: [file], loadSystemFonts: false } }).getBBox() ?? {};
    if (width === undefined) throw new Error(`nothing is drawn of ${text}`);
    return width;
  };
  const bare = drawn('');
  const alone = new Map(letters.map((letter) => [letter, drawn(letter) - bare]));
  return new Map(
    letters.map((left) => {
      const wider = letters.map(
        (right) => drawn(left + right) - bare - (alone.get(left) ?? 0) - (alone.get(right) ?? 0),
      );
      return [left, Math.ceil(Math.max(0, ...wider) - 0.01)];
    }),
  );
}

const tables = FONTS.map(({ name, said, family, file }) => {
  const path = `node_modules/@expo-google-fonts/${file}`;
  const advances = fontAdvances(path);
  const letters = [...advances.keys()].filter((letter) => letter >= ' ');
  const paired = letters.filter((letter) => letter < '\u0180' && !isMark(letter));
  const wider = widened(family, path, paired);
  const byAdvance = new Map<number, string>();
  for (const letter of letters) {
    const advance = (advances.get(letter) ?? 0) + (wider.get(letter) ?? 0);
    byAdvance.set(advance, (byAdvance.get(advance) ?? '') + letter);
  }
  const rows = [...byAdvance]
    .sort(([a], [b]) => a - b)
    .map(([advance, of]) => `  [${advance}, ${JSON.stringify(of)}],`);
  return `/** ${said}. */\nexport const ${name}: GlyphAdvances = [\n${rows.join('\n')}\n];\n`;
});

const text = `/**
 * How far each letter that a shipped font has moves on, in thousandths of the type's size, with what a pair that begins
 * with it may be set wider at most; other pairs are set closer, so a sum of these is never less than what is drawn.
 * Written by \`seed/build-glyph-advances.ts\`; a test holds it against the fonts as they are drawn.
 */
export type GlyphAdvances = readonly (readonly [advance: number, letters: string])[];

${tables.join('\n')}`;
writeFileSync(fileURLToPath(new URL('../lib/publish/glyph-advances.ts', import.meta.url)), text);
