import { changeOf, meets, type FitAmount, type FitLimit } from '#lib/swap/fit-amounts';
import { settled } from '#lib/units/print';

/** The amounts that one may have: as it is, and every step between its bounds. */
export function choicesOf({ start, low, high, step }: FitAmount): readonly number[] {
  if (step === null) throw new Error('a search of all needs steps');
  const kept = start >= low && start <= high ? [start] : [];
  const stepped: number[] = [];
  for (let many = Math.ceil(settled(low / step)); many * step <= high + 1e-9; many += 1) {
    if (settled(many * step) !== start) stepped.push(settled(many * step));
  }
  return [...kept, ...stepped];
}

/** The least change by trying every combination; null where none fits. */
export function everyCombination(
  amounts: readonly FitAmount[],
  limits: readonly FitLimit[],
): { readonly amounts: readonly number[]; readonly change: number } | null {
  let best: { amounts: readonly number[]; change: number } | null = null;
  const choices = amounts.map(choicesOf);
  const walk = (chosen: readonly number[]) => {
    const next = choices[chosen.length];
    if (next) {
      for (const amount of next) walk([...chosen, amount]);
      return;
    }
    const change = changeOf(amounts, chosen);
    if (best && change >= best.change) return;
    if (limits.every((limit) => meets(limit, amounts, chosen))) best = { amounts: chosen, change };
  };
  walk([]);
  return best;
}

/**
 * What a person might do: again and again the one step that brings the limits nearest for its change, until they are
 * met; null where it gets no further.
 */
export function byGreed(
  amounts: readonly FitAmount[],
  limits: readonly FitLimit[],
): { readonly amounts: readonly number[]; readonly change: number } | null {
  const miss = (chosen: readonly number[]) =>
    limits.reduce((sum, limit) => {
      const at =
        limit.base +
        amounts.reduce(
          (all, { start }, i) => all + (limit.per[i] ?? 0) * ((chosen[i] ?? start) - start),
          0,
        );
      return sum + Math.max(0, (limit.from ?? at) - at, at - (limit.to ?? at)) / limit.size;
    }, 0);
  let chosen = amounts.map(({ start }) => start);
  for (let round = 0; round < 200; round += 1) {
    if (limits.every((limit) => meets(limit, amounts, chosen)))
      return { amounts: chosen, change: changeOf(amounts, chosen) };
    const moves = amounts.flatMap((amount, at) =>
      choicesOf(amount)
        .filter((to) => Math.abs(to - (chosen[at] ?? 0)) <= (amount.step ?? 0))
        .map((to) => chosen.map((each, i) => (i === at ? to : each))),
    );
    const better = moves.reduce((a, b) => (miss(b) < miss(a) ? b : a), chosen);
    if (miss(better) >= miss(chosen)) return null;
    chosen = better;
  }
  return null;
}
