import { weighingWords, type WeighedOf } from '#lib/episode/typed-weighing';
import { readScaleGrams } from '#lib/units/scale-grams';
import type { Held } from './weigh-ways';

/** What stands in the form of a reading so far, in words; null where that cannot be said yet. */
export function typedWords(form: FormData, of: WeighedOf, held: Held): string | null {
  const text = (name: string) => {
    const value = form.get(name);
    return typeof value === 'string' ? value : '';
  };
  const nowMg = readScaleGrams(text('gross'));
  if (nowMg === null) return null;
  const way = text('method');
  const common = { of, nowMg, otherMg: readScaleGrams(text('after')) };
  if (way === 'total') {
    return weighingWords({ ...common, way, containerMg: 0, beforeMg: held.onScale?.mg ?? null });
  }
  if (way === 'difference') {
    return weighingWords({ ...common, way, containerMg: 0, beforeMg: held.waiting?.mg ?? null });
  }
  const containerMg = readScaleGrams(text('tare')) ?? Number(text('tareAgain'));
  return weighingWords({ ...common, way: 'direct', containerMg, beforeMg: null });
}
