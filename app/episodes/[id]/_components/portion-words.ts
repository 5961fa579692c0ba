import type { PortionSum } from '#lib/episode/portion-sum';
import type { Ratio } from '#lib/episode/fields';
import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { Portion } from '#lib/episode/recipe-schema';
import { DEFAULT_SPREAD_PERMILLE, spreadPermille } from '#lib/episode/spreads';
import { printGrams } from '#lib/units/print';
import { ratioText } from '#lib/units/read-quantity';
import { permilleTyped } from '#lib/units/read-typed';

/** What one portion is. */
export function portionWords(portion: Portion): string {
  if (portion.kind === 'count') return `of ${portion.of} equal portions`;
  if (portion.kind === 'mass') return `${printGrams(portion.massMg)} g of the finished dish`;
  return byEyeWords(portion.share, portion.permille);
}

/** `byEyeWords(1/3, 150)` → `'1/3 by eye, ± 15 %'`. */
export function byEyeWords(share: Ratio, permille: number): string {
  return `${ratioText(share)} by eye, ± ${permilleTyped(permille)} %`;
}

/** How far a share by eye may miss in a kitchen, and where that comes from, for the forms that ask. */
export function kitchenSpread(kitchen: Kitchen): {
  readonly spread: string;
  readonly spreadFrom: string;
} {
  const permille = spreadPermille(kitchen, 'portion');
  const byDefault = permille === DEFAULT_SPREAD_PERMILLE.portion;
  return {
    spread: permilleTyped(permille),
    spreadFrom: byDefault
      ? 'Common practice, no source; change it here or in the kitchen.'
      : 'As in your kitchen.',
  };
}

/** What several unequal portions come to, and what of the dish is in none of them. One alone says nothing. */
export function sumWords({ byGrams, byEye }: PortionSum): readonly string[] {
  const words: string[] = [];
  if (byGrams && byGrams.count > 1) {
    const { mg, leftMg } = byGrams;
    words.push(`By grams ${printGrams(mg)} g together${gramsLeft(leftMg)}`);
  }
  if (byEye && byEye.count > 1) {
    const { share, left } = byEye;
    words.push(`By eye ${ratioText(share)} together${eyeLeft(left)}`);
  }
  return words;
}

const ALL = ', all of the dish: their numbers add up to it.';

function gramsLeft(leftMg: number | null): string {
  if (leftMg === null) return '.';
  if (leftMg === 0) return ALL;
  const grams = `${printGrams(Math.abs(leftMg))} g`;
  return leftMg > 0
    ? `; ${grams} of the dish are in none.`
    : `, ${grams} more than the dish weighs.`;
}

function eyeLeft(left: Ratio): string {
  if (left.num === 0) return ALL;
  const part = ratioText({ num: Math.abs(left.num), den: left.den });
  return left.num > 0 ? `; ${part} of the dish is in none.` : `, ${part} more than there is.`;
}
