import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { editPicture, PICTURE, type EditResult } from '#lib/publish/edit-picture';
import { widthAtMost, wrapped, xmlText, type Face } from '#lib/publish/picture-text';
import { svgToPng } from '#lib/work/svg-to-png';
import { DAY } from '../../app/_ui/palette';

const FOLDER = 'node_modules/@expo-google-fonts';
const FILES = [
  `${FOLDER}/atkinson-hyperlegible-next/600SemiBold/AtkinsonHyperlegibleNext_600SemiBold.ttf`,
  `${FOLDER}/barlow-condensed/600SemiBold/BarlowCondensed_600SemiBold.ttf`,
];

/** How wide the drawing library sets some words in the fonts themselves. */
function drawnWidth(words: string, face: Face): number {
  const family = face === 'slate' ? 'Barlow Condensed' : 'Atkinson Hyperlegible Next';
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="9000" height="200"><text x="0" y="100" font-family="${family}" font-weight="600" font-size="100" xml:space="preserve">${xmlText(words)}</text></svg>`;
  const drawn = new Resvg(svg, { font: { fontFiles: FILES, loadSystemFonts: false } });
  return drawn.getBBox()?.width ?? 0;
}

const COLOURS = { ...DAY, chalkSoft: DAY['chalk-soft'] };
const BEAM = { strokes: 'M24 29V9M17 29h14M8 9L40 9', dotted: 'M0 0' };
const BEAMS = { off: BEAM, edge: BEAM, agrees: BEAM, unknown: BEAM };
const RESULT: EditResult = {
  title: 'One oven, <three> dishes & "a tray"',
  on: 'Sat 12 Dec',
  counts: { off: 7, edge: 1, agrees: 31, unknown: 4 },
  off: Array.from({ length: 7 }, (_, at) => ({
    place: `3:1${at}`,
    words: '640 calories for the whole tray',
    verdict: 'off by 38 calories',
    sayInstead: 'about 600 calories',
  })),
  contradictions: 1,
  named: 2,
};

describe('words in a picture', () => {
  test.each(['text', 'slate'] as const)('are never set wider than was reckoned: %s', (face) => {
    const letter = fc.integer({ min: 32, max: 126 }).map((code) => String.fromCharCode(code));
    const words = fc.string({ unit: letter, minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(words, (text) => {
        // The ink of a "j" hangs 6.6 % of the size over its place to the left (measured).
        expect(drawnWidth(text, face)).toBeLessThanOrEqual(widthAtMost(text, 100, face) + 7);
      }),
      { numRuns: 300 },
    );
  });

  test('no line is wider than it may be, no more lines are set than there may be', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 200 }),
        fc.integer({ min: 1, max: 4 }),
        (text, mostLines) => {
          const lines = wrapped(text, { size: 30, face: 'text', width: 300, mostLines });
          expect(lines.length).toBeLessThanOrEqual(mostLines);
          for (const line of lines) expect(widthAtMost(line, 30, 'text')).toBeLessThanOrEqual(300);
        },
      ),
    );
  });

  test('what does not fit ends in …, what fits is left as it is', () => {
    const setting = { size: 30, face: 'text', width: 200, mostLines: 2 } as const;
    expect(wrapped('the whole tray', setting)).toEqual(['the whole', 'tray']);
    expect(wrapped('the whole tray of barley and skyr', setting).at(-1)).toMatch(/…$/);
  });

  test('XML’s own marks are references, and what XML has not is left out (XML 1.0, 2.2)', () => {
    expect(xmlText('a<b>&"c"\u0000\u000B\uD800d')).toBe('a&lt;b&gt;&amp;&quot;c&quot;d');
  });
});

describe('the picture of a result', () => {
  const svg = editPicture(RESULT, COLOURS, BEAMS);

  test('is a PNG of its size, with more than its ground drawn', () => {
    const { width, height, data } = PNG.sync.read(svgToPng(svg));
    expect({ width, height }).toEqual(PICTURE);
    const colours = new Set<number>();
    for (let at = 0; at < data.length; at += 4) colours.add(data.readUInt32BE(at));
    expect(colours.size).toBeGreaterThan(50);
  });

  test('says how many stand how, what is off, and that no number is said to be true', () => {
    const words = [...svg.matchAll(/<text[^>]*>([^<]*)</g)].map(([, text]) => text).join('\n');
    for (const part of ['7', '31', 'can’t say', 'off by 38 calories. Say: about 600 calories']) {
      expect(words).toContain(part);
    }
    expect(words).toContain('2 more that are off · 1 contradiction · 2 foods named, not counted');
    expect(words).toContain('It never says that a number is true.');
    expect(words).toContain('One oven, &lt;three&gt; dishes');
  });

  test('where nothing is off it says so', () => {
    const none = { ...RESULT, off: [], counts: { ...RESULT.counts, off: 0 } };
    expect(editPicture(none, COLOURS, BEAMS)).toContain('Nothing that was said is off.');
  });
});
