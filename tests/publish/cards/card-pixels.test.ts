import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { CARD_KINDS, type Card, type CardKind } from '#lib/publish/cards/card';
import { drawCard } from '#lib/publish/cards/draw-card';
import { CARD_SIZES, cardFrame, safeAreas, THUMBNAIL_SIZE } from '#lib/publish/cards/frame';
import { CARD_GROUNDS, type CardGround } from '#lib/publish/cards/inks';
import { svgInPaths, svgToPng } from '#lib/work/svg-to-png';
import { COLOURS, draftCards } from './support';

interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly pixels: number;
}

/** The box about all pixels that are not wholly transparent. */
function extentOf({ width, height, data }: PNG): Extent {
  let [left, top, right, bottom, pixels] = [width, height, -1, -1, 0];
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      if (data[(y * width + x) * 4 + 3] === 0) continue;
      pixels += 1;
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  }
  return { left, top, right: right + 1, bottom: bottom + 1, pixels };
}

/** A drawing with its words alone. */
const wordsOnly = (svg: string) => svg.replace(/<(?:rect|path)[^>]*\/>/g, '');

const CARDS = draftCards();
/** The card of a kind with the most on it. */
function fullest(kind: CardKind): Card {
  const size = (card: Card) => JSON.stringify(card).length;
  const [first, ...rest] = CARDS.filter((card) => card.kind === kind);
  if (!first) throw new Error(`no card of kind ${kind}`);
  return rest.reduce((most, card) => (size(card) > size(most) ? card : most), first);
}

const ROWS = CARD_KINDS.flatMap((kind) =>
  CARD_SIZES.filter((size) => (size === THUMBNAIL_SIZE) === (kind === 'thumbnail')).flatMap(
    (size) => CARD_GROUNDS.map((ground) => ({ kind, size, ground })),
  ),
);

describe('the safe areas', () => {
  // SMPTE ST 2046-1:2009 (93 % and 90 %) and EBU R 95 (3.5 % and 5 % on each side).
  test.each([
    [1920, 1080, { left: 96, top: 54, right: 1824, bottom: 1026 }, 67.2, 37.8],
    [1280, 720, { left: 64, top: 36, right: 1216, bottom: 684 }, 44.8, 25.2],
    [3840, 2160, { left: 192, top: 108, right: 3648, bottom: 2052 }, 134.4, 75.6],
    [1080, 1920, { left: 54, top: 96, right: 1026, bottom: 1824 }, 37.8, 67.2],
  ])('of %i × %i are those of the standard', (width, height, graphics, x, y) => {
    const areas = safeAreas(width, height);
    for (const side of ['left', 'top', 'right', 'bottom'] as const) {
      expect(areas.graphics[side]).toBeCloseTo(graphics[side], 9);
    }
    expect(areas.action.left).toBeCloseTo(x, 9);
    expect(areas.action.top).toBeCloseTo(y, 9);
  });
});

describe('a card as PNG, read by another library', () => {
  test.each(ROWS)('$kind at $size on $ground', ({ kind, size, ground }) => {
    const [svg = ''] = drawCard(fullest(kind), { size, ground, colours: COLOURS });
    const { width, height } = cardFrame(size);
    const { action, graphics } = safeAreas(width, height);
    const whole = PNG.sync.read(svgToPng(svg));
    expect([whole.width, whole.height]).toEqual([width, height]);
    expect(whole.data[3], 'transparent at the corner').toBe(0);

    const drawn = extentOf(whole);
    expect(drawn.left).toBeGreaterThanOrEqual(Math.floor(action.left));
    expect(drawn.top).toBeGreaterThanOrEqual(Math.floor(action.top));
    expect(drawn.right).toBeLessThanOrEqual(Math.ceil(action.right));
    expect(drawn.bottom).toBeLessThanOrEqual(Math.ceil(action.bottom));

    const text = extentOf(PNG.sync.read(svgToPng(wordsOnly(svg))));
    expect(text.pixels).toBeGreaterThan(1000);
    expect(text.left).toBeGreaterThanOrEqual(graphics.left);
    expect(text.top).toBeGreaterThanOrEqual(graphics.top);
    expect(text.right).toBeLessThanOrEqual(graphics.right);
    expect(text.bottom).toBeLessThanOrEqual(graphics.bottom);
  });

  test('a plate lets a little through, letters on it nothing', () => {
    const [svg = ''] = drawCard(fullest('dish'), {
      ...{ size: '1920x1080', ground: 'plate', colours: COLOURS },
    });
    const { data } = PNG.sync.read(svgToPng(svg));
    const alphas = new Set<number>();
    for (let at = 3; at < data.length; at += 4) alphas.add(data[at] ?? 0);
    expect(alphas.has(0)).toBe(true);
    expect(alphas.has(Math.round(0.94 * 255))).toBe(true);
    expect(alphas.has(255)).toBe(true);
  });

  test('letters are no smaller than 2.2 % of the shorter side', () => {
    for (const card of CARDS) {
      const size = card.kind === 'thumbnail' ? THUMBNAIL_SIZE : '1080x1920';
      const { scale, width, height } = cardFrame(size);
      for (const ground of CARD_GROUNDS) {
        for (const svg of drawCard(card, { size, ground, colours: COLOURS })) {
          for (const [, type = ''] of svg.matchAll(/font-size="([\d.]+)"/g)) {
            expect(capital(type) * scale).toBeGreaterThanOrEqual(0.022 * Math.min(width, height));
          }
        }
      }
    }
  });

  test('with its letters as paths it needs no font and is the same picture', () => {
    for (const ground of CARD_GROUNDS) {
      const [svg = ''] = drawCard(fullest('dish'), {
        ...{ size: '1920x1080', ground, colours: COLOURS },
      });
      const paths = svgInPaths(svg);
      expect(paths).not.toContain('<text');
      expect(differing(svg, paths, ground)).toBeLessThan(0.001);
    }
  });
});

/** The share of pixels that differ by more than a trace. */
function differing(one: string, other: string, _ground: CardGround): number {
  const [a, b] = [one, other].map((svg) => PNG.sync.read(svgToPng(svg)).data);
  if (!a || !b) throw new Error('nothing drawn');
  let count = 0;
  for (let at = 3; at < a.length; at += 4) {
    if (Math.abs((a[at] ?? 0) - (b[at] ?? 0)) > 40) count += 1;
  }
  return count / (a.length / 4);
}

/** The height of an H in the text face, as it is drawn. */
const heights = new Map<string, number>();
function capital(size: string): number {
  const known = heights.get(size);
  if (known !== undefined) return known;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="900" height="900"><text x="100" y="700" font-family="Atkinson Hyperlegible Next" font-weight="600" font-size="${size}">H</text></svg>`;
  const { top, bottom } = extentOf(PNG.sync.read(svgToPng(svg)));
  heights.set(size, bottom - top);
  return bottom - top;
}
