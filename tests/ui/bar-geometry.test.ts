import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PictureBar } from '#lib/figures/breakdown-picture';
import {
  hatchLines,
  LABEL_HEIGHT,
  LACKS,
  partsBar,
  spreadLabels,
  textureLines,
} from '../../app/_ui/bar-geometry';
import { FIGURES } from '../../app/look/_components/figure-samples';

/** A bar of so many parts, held against so many targets; `high` null where it is only at least. */
function aBar(values: readonly number[], targets: readonly number[], open = false): PictureBar {
  const sum = values.reduce((all, value) => all + value, 0);
  return {
    nutrient: 'protein',
    figure: open
      ? { ...FIGURES.atLeast, value: sum, low: sum }
      : {
          ...FIGURES.known,
          value: sum,
          low: sum * 0.9,
          high: sum * 1.6,
          likelyLow: sum * 0.95,
          likelyHigh: sum * 1.05,
        },
    parts: values.map((value, at) => {
      return { key: `p${at}`, name: `part ${at}`, value, share: value / sum, rest: false };
    }),
    lacks: open ? 'no value for paprika' : '',
    targets: targets.map((amount, at) => {
      return { id: `t${at}`, relation: 'atMost', amount, verdict: 'met', far: null };
    }),
    reach: Math.max(sum, ...targets),
  };
}

const bars = fc
  .tuple(
    fc.array(fc.double({ min: 0.001, max: 1e4, noNaN: true }), { minLength: 1, maxLength: 6 }),
    fc.array(fc.double({ min: 0, max: 1e4, noNaN: true }), { maxLength: 3 }),
    fc.boolean(),
  )
  .map(([values, targets, open]) => aBar(values, targets, open));

describe('a bar of parts', () => {
  test('stacks its parts without gap, as high as their values, inside the drawing', () => {
    fc.assert(
      fc.property(bars, (bar) => {
        const { pieces, height, open, range, limits } = partsBar(bar);
        expect(pieces).toHaveLength(bar.parts.length);
        const scale = (pieces.at(-1)?.bottom ?? 0) - (pieces[0]?.top ?? 0);
        const sum = bar.parts.reduce((all, { value }) => all + value, 0);
        pieces.forEach((piece, at) => {
          const part = bar.parts[at];
          expect(piece.bottom - piece.top).toBeCloseTo(((part?.value ?? 0) / sum) * scale, 6);
          if (at > 0) expect(piece.top).toBe(pieces[at - 1]?.bottom);
        });
        const marks = [
          ...pieces.flatMap(({ top, bottom }) => [top, bottom]),
          ...(open ? [open.top, open.bottom] : []),
          ...(range ? [range.value, range.hard.top, range.hard.bottom, range.likely.top] : []),
          ...limits.map(({ y }) => y),
        ];
        for (const mark of marks) {
          expect(mark).toBeGreaterThanOrEqual(0);
          expect(mark).toBeLessThanOrEqual(height);
        }
      }),
    );
  });

  test('has a label for each part and target, and for what it lacks; none touch', () => {
    fc.assert(
      fc.property(bars, (bar) => {
        const { labels, height } = partsBar(bar);
        const keys = [...bar.parts.map(({ key }) => key), ...bar.targets.map(({ id }) => id)];
        if (bar.lacks !== '') keys.push(LACKS);
        expect(labels.map(({ key }) => key).sort()).toEqual(keys.sort());
        labels.forEach(({ from, to }, at) => {
          const above = labels[at - 1];
          expect(to - LABEL_HEIGHT / 2).toBeGreaterThanOrEqual(-1e-6);
          expect(to + LABEL_HEIGHT / 2).toBeLessThanOrEqual(height + 1e-6);
          if (!above) return;
          expect(to - above.to).toBeGreaterThanOrEqual(LABEL_HEIGHT - 1e-6);
          expect(from).toBeGreaterThanOrEqual(above.from);
        });
      }),
    );
  });

  test('differs from neighbour to neighbour in texture', () => {
    const { pieces } = partsBar(aBar([1, 2, 3, 4, 5, 6], []));
    pieces.slice(1).forEach((piece, at) => expect(piece.texture).not.toBe(pieces[at]?.texture));
  });

  test('that is at least goes on, open, above its parts; one that is open has no part at all', () => {
    const some = partsBar(aBar([5, 4], [12], true));
    expect(some.open?.bottom).toBe(some.pieces[0]?.top);
    expect(some.range).toBeNull();
    const none = partsBar({
      ...aBar([], [], true),
      figure: FIGURES.open,
      reach: 0,
    });
    expect(none.pieces).toEqual([]);
    expect(none.open).not.toBeNull();
    expect(none.labels.map(({ key }) => key)).toEqual([LACKS]);
  });

  test('cuts a range that is much wider than the bar, and says so by its end', () => {
    const bar = aBar([10], []);
    expect(partsBar(bar).range?.hard.cut).toBe(true);
    const near = { ...bar, figure: { ...bar.figure, high: 11 } };
    expect(partsBar(near).range?.hard.cut).toBe(false);
  });
});

describe('labels', () => {
  test('stay where they want to be if there is room, and share the way if not', () => {
    expect(spreadLabels([20, 60, 110], 20, 200)).toEqual([20, 60, 110]);
    expect(spreadLabels([50, 50], 20, 200)).toEqual([40, 60]);
    expect(spreadLabels([10, 12], 20, 100)).toEqual([10, 30]);
    expect(spreadLabels([99, 100], 20, 100)).toEqual([70, 90]);
    expect(spreadLabels([], 20, 100)).toEqual([]);
  });

  // Held against a search over a grid: no other placing that keeps order and room moves less.
  test('move no further than they must', () => {
    const cost = (at: readonly number[], wanted: readonly number[]) =>
      at.reduce((sum, each, index) => sum + (each - (wanted[index] ?? 0)) ** 2, 0);
    const wanted = fc
      .array(fc.integer({ min: 0, max: 10 }), { minLength: 3, maxLength: 3 })
      .map((all) => all.sort((a, b) => a - b));
    fc.assert(
      fc.property(wanted, (all) => {
        const found = cost(spreadLabels(all, 2, 10), all);
        let best = Infinity;
        for (let a = 1; a <= 9; a += 0.5) {
          for (let b = a + 2; b <= 9; b += 0.5) {
            for (let c = b + 2; c <= 9; c += 0.5) best = Math.min(best, cost([a, b, c], all));
          }
        }
        expect(found).toBeLessThanOrEqual(best + 1e-9);
      }),
    );
  });
});

test('textures and hatches stay inside their box', () => {
  const edge = fc.double({ min: 0, max: 300, noNaN: true });
  fc.assert(
    fc.property(edge, edge, edge, edge, (a, b, c, d) => {
      const box = {
        ...{ top: Math.min(a, b), bottom: Math.max(a, b) },
        ...{ left: Math.min(c, d), right: Math.max(c, d) },
      };
      for (const y of textureLines(box, 5)) {
        expect(y).toBeGreaterThan(box.top);
        expect(y).toBeLessThan(box.bottom);
      }
      for (const { x1, y1, x2, y2 } of hatchLines(box, 6)) {
        for (const x of [x1, x2]) {
          expect(x).toBeGreaterThanOrEqual(box.left - 1e-9);
          expect(x).toBeLessThanOrEqual(box.right + 1e-9);
        }
        for (const y of [y1, y2]) {
          expect(y).toBeGreaterThanOrEqual(box.top - 1e-9);
          expect(y).toBeLessThanOrEqual(box.bottom + 1e-9);
        }
        expect(x2 - x1).toBeCloseTo(y1 - y2, 9);
      }
    }),
  );
});
