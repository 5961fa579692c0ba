import type { Weighing } from '#lib/episode/recipe-schema';
import type { OpenDisplay } from '#lib/shoot/day-weighings';

/** An ingredient that no reading counts for, and why. */
export interface Unweighed {
  readonly lineId: string;
  readonly text: string;
  /** `photo`: its number is still to be typed. `half`: it was weighed before, and not after. */
  readonly why: 'not' | 'photo' | 'half';
}

/** The ingredients of a dish that nobody has weighed yet, in their order. */
export function unweighedOf(
  lines: readonly { readonly id: string; readonly text: string }[],
  weighings: readonly Weighing[],
  displays: readonly Pick<OpenDisplay, 'lineId'>[],
): Unweighed[] {
  const ids = (kinds: readonly Weighing['kind'][]) =>
    new Set(
      weighings
        .filter(({ kind }) => kinds.includes(kind))
        .flatMap(({ shares }) => shares.map(({ lineId }) => lineId)),
    );
  const weighed = ids(['raw', 'cooked']);
  const waiting = ids(['container']);
  return lines
    .filter(({ id }) => !weighed.has(id))
    .map(({ id, text }) => {
      const photo = displays.some(({ lineId }) => lineId === id);
      return { lineId: id, text, why: photo ? 'photo' : waiting.has(id) ? 'half' : 'not' };
    });
}

/** Words of an ingredient without its amount that a step may name: letters only, four or more, without a plural s. */
function wordsOf(text: string): string[] {
  return (text.toLowerCase().match(/\p{L}{4,}/gu) ?? []).map((word) => word.replace(/s$/, ''));
}

/**
 * The ingredients of a dish in the order in which a step is likely to ask for them: what is not weighed yet first,
 * and of that first what the step names.
 * @example inOrderFor('Toast the barley', [butter, barley], nothing weighed) // barley, butter
 */
export function inOrderFor<L extends { readonly id: string; readonly text: string }>(
  step: string,
  lines: readonly L[],
  unweighed: readonly Unweighed[],
): L[] {
  const named = new Set(wordsOf(step));
  const open = new Set(unweighed.map(({ lineId }) => lineId));
  const rank = ({ id, text }: L) =>
    open.has(id) ? (wordsOf(text).some((word) => named.has(word)) ? 0 : 1) : 2;
  return [...lines].sort((a, b) => rank(a) - rank(b));
}
