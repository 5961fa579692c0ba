import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readIngredient, readIngredientList } from '#lib/episode/read-ingredient';
import { quantityText } from '#lib/units/read-quantity';

interface HostileLine {
  readonly text: string;
  readonly must: 'read' | 'open' | 'refused';
  readonly why: string;
}

const { lines } = JSON.parse(
  readFileSync(new URL('hostile-ingredients.json', import.meta.url), 'utf8'),
) as { lines: readonly HostileLine[] };

/** What the lines that must be read are, by the reason that stands beside each. */
const READ: Readonly<Record<string, string>> = {
  '<b>200 g</b> flour': '200 g flour',
  '🥚🥚 2 eggs 🍳': '2 piece eggs',
  '\u200e200 g rice\u200e': '200 g rice',
  '200\u200bg plain\u200b flour': '200 g plain flour',
  '3/7 blorp of sugar': '3/7 piece/blorp sugar',
  '\t175\tg\tplain flour\t': '175 g plain flour',
  '２００ｇ flour': '200 g flour',
  '1 tin (400 g (net (about))) chickpeas': '1 pack/tin chickpeas',
  '200 g constructor': '200 g constructor',
};

function brief(text: string): string {
  // A list is cleaned of markup; a line that is too long for one is read by itself.
  const listed = readIngredientList(text).lines.flatMap((line) => line.parts);
  const parts = listed.length > 0 ? listed : readIngredient(text);
  return parts
    .map(({ quantity, unit, measure, food }) => {
      const counted = measure === null ? unit : `${unit}/${measure}`;
      return quantity ? `${quantityText(quantity)} ${counted} ${food}` : 'open';
    })
    .join(' + ');
}

describe('hostile lines, written without sight of the reader', () => {
  test.each(lines)('$why', ({ text, must }) => {
    if (must === 'read') {
      const expected = text.length > 400 ? '250 g flour' : READ[text];
      expect(brief(text)).toBe(expected);
      return;
    }
    expect(brief(text)).toBe('open');
    const list = readIngredientList(text);
    const remarks = [
      ...list.remarks,
      ...list.lines.flatMap((l) => l.parts.flatMap((p) => p.remarks)),
    ];
    expect(remarks.length).toBeGreaterThan(0);
  });
});
