import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { hex } from 'wcag-contrast';
import { describe, expect, test } from 'vitest';
import { GROUNDS, PAIRS, PALETTES, TEXT_INKS, TOKENS, paletteCss } from '../../app/_ui/palette';
import { contrastRatio } from './contrast-ratio';

const app = fileURLToPath(new URL('../../app/', import.meta.url));

function sources(ending: RegExp): { name: string; text: string }[] {
  return readdirSync(app, { recursive: true, encoding: 'utf8' })
    .filter((name) => ending.test(name))
    .map((name) => ({ name, text: readFileSync(app + name, 'utf8') }));
}

// Derived from the formula of WCAG 2.2 (W3C source of 19 August 2026), to four decimals.
const VECTORS: [string, string, number][] = [
  ['#000000', '#FFFFFF', 21],
  ['#767676', '#FFFFFF', 4.5422],
  ['#777777', '#FFFFFF', 4.4781],
  ['#949494', '#FFFFFF', 3.0335],
  ['#959595', '#FFFFFF', 2.9953],
  ['#FF0000', '#FFFFFF', 3.9985],
  ['#FFFF00', '#000000', 19.556],
  ['#FFFFFF', '#FFFF00', 1.0738],
];

describe('the contrast ratio', () => {
  test.each(VECTORS)('of %s and %s is %f (WCAG 2.2)', (a, b, ratio) => {
    expect(contrastRatio(a, b)).toBeCloseTo(ratio, 4);
    expect(contrastRatio(b, a)).toBe(contrastRatio(a, b));
  });

  test.each(Object.entries(PALETTES))(
    'agrees with the npm package wcag-contrast on every pair of the %s palette',
    (_name, palette) => {
      // The package rounds each luminance to five decimals or so: a hundredth in the ratio.
      for (const a of TOKENS) {
        for (const b of TOKENS) {
          expect(contrastRatio(palette[a], palette[b])).toBeCloseTo(hex(palette[a], palette[b]), 1);
        }
      }
    },
  );
});

describe.each(Object.entries(PALETTES))('the %s palette', (_name, palette) => {
  // WCAG 2.2 SC 1.4.3: 4.5 for text, large text included; SC 1.4.11: 3 for marks and controls.
  test.each(PAIRS.map((pair) => [pair.fore, pair.ground, pair.least] as const))(
    '%s on %s has at least %f',
    (fore, ground, least) => {
      expect(contrastRatio(palette[fore], palette[ground])).toBeGreaterThanOrEqual(least);
    },
  );
});

test('every text ink is held against every ground at 4.5', () => {
  for (const fore of TEXT_INKS) {
    for (const ground of GROUNDS) {
      expect(PAIRS).toContainEqual({ fore, ground, least: 4.5 });
    }
  }
});

describe('no element leaves the pairs', () => {
  const css = sources(/\.css$/);
  const code = sources(/\.tsx?$/).filter(({ name }) => !name.endsWith('palette.ts'));

  test('no colour is written outside the palette', () => {
    for (const { name, text } of [...css, ...code]) {
      expect(
        text.match(/#[0-9a-f]{3,8}\b(?!\/)|\b(?:rgba?|hsla?|oklch|color-mix)\(/gi) ?? [],
        name,
      ).toEqual([]);
    }
  });

  test('the stylesheet uses only tokens of the palette', () => {
    for (const { name, text } of css) {
      const used = [...text.matchAll(/--color-[a-z-]+:\s*var\(--([a-z-]+)\)/g)].map((m) => m[1]);
      expect(new Set(used), name).toEqual(new Set(TOKENS));
    }
  });

  // One string literal holds the classes of one element: a filled ground there names its own ink.
  const classLists = code.flatMap(({ name, text }) =>
    [...text.matchAll(/'([^'\n]*)'|"([^"\n]*)"|`([^`]*)`/g)].map((m) => ({
      name,
      classes: (m[1] ?? m[2] ?? m[3] ?? '').split(/\s+/),
    })),
  );
  const plain = (names: readonly string[], prefix: string) =>
    names.filter((n) => n.startsWith(prefix)).map((n) => n.slice(prefix.length));

  test('marks and hairlines never colour text', () => {
    for (const { name, classes } of classLists) {
      const inks = classes.map((c) => c.replace(/^.*:/, ''));
      expect(
        inks.filter((c) => c === 'text-edge' || c === 'text-line'),
        name,
      ).toEqual([]);
    }
  });

  test('both hatches are drawn in the hairline colour that text over them is held against', () => {
    const [{ text } = { text: '' }] = css;
    for (const hatch of ['hatch', 'provisional']) {
      const rule = new RegExp(`@utility ${hatch} \\{[^}]*\\}`).exec(text)?.[0] ?? '';
      expect(
        [...rule.matchAll(/var\(--([a-z-]+)\)/g)].map((m) => m[1]),
        hatch,
      ).toEqual(['line']);
    }
    for (const fore of ['ink', 'soft']) {
      expect(PAIRS).toContainEqual({ fore, ground: 'line', least: 4.5 });
    }
  });

  test('a filled ground is written together with an ink that it is held against', () => {
    let filled = 0;
    for (const { name, classes } of classLists) {
      for (const ground of plain(classes, 'bg-')) {
        if (ground !== 'slate' && ground !== 'ink' && ground !== 'hand') continue;
        const inks = plain(classes, 'text-').filter((t) =>
          (TOKENS as readonly string[]).includes(t),
        );
        // A bar or tick that is only drawn has no text to colour and says so by its fixed height.
        if (inks.length === 0 && classes.some((c) => /^(h|w)-/.test(c))) continue;
        filled += 1;
        expect(inks.length, `${name}: bg-${ground} without an ink`).toBeGreaterThan(0);
        for (const fore of inks) {
          expect(
            PAIRS.some((p) => p.fore === fore && p.ground === ground),
            `${name}: ${fore} on ${ground}`,
          ).toBe(true);
        }
      }
    }
    expect(filled).toBeGreaterThan(0);
  });
});

test('the chosen theme wins over the device, and print over both', () => {
  const css = paletteCss();
  expect(css).toMatch(/prefers-color-scheme:dark\)\{:root:not\(\[data-theme=day\]\)/);
  expect(css).toContain('\n[data-theme=night]{');
  expect(css.indexOf('@media print')).toBeGreaterThan(css.indexOf('[data-theme=night]'));
  for (const palette of Object.values(PALETTES)) {
    for (const token of TOKENS) expect(css).toContain(`--${token}:${palette[token]}`);
  }
});
