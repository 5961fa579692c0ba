import { describe, expect, test } from 'vitest';
import { hasForm, widthAtMost, type Face } from '#lib/publish/picture-text';
import { fontAdvances } from '../../seed/font-advances';

const FOLDER = 'node_modules/@expo-google-fonts';
const FILES: Readonly<Record<Face, string>> = {
  text: `${FOLDER}/atkinson-hyperlegible-next/600SemiBold/AtkinsonHyperlegibleNext_600SemiBold.ttf`,
  slate: `${FOLDER}/barlow-condensed/600SemiBold/BarlowCondensed_600SemiBold.ttf`,
};

describe('widths of letters', () => {
  test.each(['text', 'slate'] as const)(
    'are the font file’s own, with room for pairs set wider and no more: %s',
    (face) => {
      const advances = fontAdvances(FILES[face]);
      expect(advances.size).toBeGreaterThan(300);
      for (const [letter, advance] of advances) {
        if (letter < ' ') continue;
        const reckoned = widthAtMost(letter, 1000, face);
        expect(reckoned, letter).toBeGreaterThanOrEqual(advance);
        // The widest pair of the two fonts, q before ĵ, is set 14.7 % of the size apart (measured).
        expect(reckoned, letter).toBeLessThanOrEqual(advance + 150);
      }
    },
  );

  test('a letter that one of the fonts lacks has no form', () => {
    expect(['a', 'é', '½', '≥', '†', '⅓', '→', '麻', 'ש', '🍅'].map(hasForm)).toEqual([
      ...[true, true, true, true, true],
      ...[false, false, false, false, false],
    ]);
  });
});
