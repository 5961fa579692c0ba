import { hex } from 'wcag-contrast';
import { describe, expect, test } from 'vitest';
import { CARD_GROUNDS, cardInks, EDGE, PLATE_OPACITY } from '#lib/publish/cards/inks';
import { COLOURS } from './support';

/** WCAG 2.2, 1.4.3: text; ratios are worked out by another library. */
const TEXT = 4.5;

const grey = (level: number) => `#${level.toString(16).padStart(2, '0').repeat(3)}`;

/** A colour laid over another, each channel by itself, as a picture program composes it. */
function over(top: string, under: string, opacity: number): string {
  const channel = (of: string, at: number) => Number.parseInt(of.slice(1 + at * 2, 3 + at * 2), 16);
  const mixed = [0, 1, 2].map((at) =>
    Math.round(channel(top, at) * opacity + channel(under, at) * (1 - opacity)),
  );
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

const PARTS = CARD_GROUNDS.flatMap((ground) => {
  const { head, body } = cardInks(ground, COLOURS);
  return [
    { ground, part: 'head', inks: head },
    { ground, part: 'body', inks: body },
  ];
});
const ROWS = PARTS.flatMap(({ ground, part, inks }) =>
  (['ink', 'soft', 'hand'] as const).map((name) => ({ ground, part, name, inks })),
);

describe('letters of cards are read', () => {
  test.each(ROWS)('$name of the $part on $ground, over any footage', ({ name, inks }) => {
    const colour = inks[name];
    for (let level = 0; level <= 255; level += 1) {
      const footage = grey(level);
      if (inks.ground !== null) {
        expect(hex(colour, over(inks.ground, footage, PLATE_OPACITY))).toBeGreaterThanOrEqual(TEXT);
      } else {
        const edge = inks.edge ?? footage;
        expect(hex(colour, edge)).toBeGreaterThanOrEqual(TEXT);
        // Either the letter or its edge stands out of what is behind: 3 : 1 as for shapes (1.4.11).
        expect(Math.max(hex(colour, footage), hex(edge, footage))).toBeGreaterThanOrEqual(3);
      }
    }
  });

  test('the sum is the standard’s: black and white, and the last grey that passes on white', () => {
    expect(hex('#000000', '#FFFFFF')).toBeCloseTo(21, 6);
    expect(hex('#767676', '#FFFFFF')).toBeGreaterThanOrEqual(TEXT);
    expect(hex('#777777', '#FFFFFF')).toBeLessThan(TEXT);
  });

  test('the edge of the smallest letters is three units on each side', () => {
    expect(EDGE.least / 2).toBeGreaterThanOrEqual(3);
  });
});
