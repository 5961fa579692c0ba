import type { LockStanding } from '#lib/lock/lock-standing';
import type { Card } from '#lib/publish/cards/card';
import { correctionCard, swapTableCard } from '#lib/publish/cards/change-cards';
import { byPart } from '#lib/publish/correction/correction-words';
import type { RecordedCorrection } from '#lib/publish/correction/recorded-correction';
import type { SwapRow } from '#lib/swap/swap-words';
import { printDayOfMonth } from '#lib/units/print-date';

/** A card for each saved swap, and one of them all where there are several; one that cannot be told says why. */
export function cardsOfSwaps(rows: readonly SwapRow[], standing: LockStanding): readonly Card[] {
  const told = (row: SwapRow) => row.problem ?? row.cells.map(({ text }) => text).join('; ');
  const each = rows.map((row) => {
    const kicker = [row.dish, row.of.replace(/^for /, '')].filter((part) => part !== '').join(', ');
    const cells = row.problem === null ? row.cells.map(({ text }) => text) : [row.problem];
    const lines = cells.map((words) => ({ words, amount: '' }));
    return swapTableCard({ kicker, title: row.name, rows: lines }, standing);
  });
  if (rows.length < 2) return each;
  const all = rows.map((row) => ({ words: `${row.name}: ${told(row)}`, amount: '' }));
  return [...each, swapTableCard({ title: 'If you swap', rows: all }, standing)];
}

/** A card for each amount that a correction puts right: energy large, or what else changed first, the others under it. */
export function cardsOfCorrection(
  { numbers, reason, on }: Pick<RecordedCorrection, 'numbers' | 'reason' | 'on'>,
  standing: LockStanding,
): readonly Card[] {
  return byPart(numbers).map(([title, all]) => {
    const lead = all.find(({ unit }) => unit === 'kcal') ?? all[0];
    if (!lead) throw new Error(`nothing is corrected of ${title}`);
    const isEnergy = lead.unit === 'kcal' || lead.unit === 'kJ';
    const also = all
      .filter((each) => each !== lead)
      .map((each) => ({
        words: each.label,
        amount:
          each.to === null
            ? 'no longer holds'
            : `${each.to.text} ${each.unit} (not ${each.from.text} ${each.unit})`,
      }));
    return correctionCard(
      {
        ...{ title, before: lead.from.text, after: lead.to?.text ?? 'open', reason, also },
        unit: isEnergy ? lead.unit : `${lead.unit} ${lead.label}`,
        on: printDayOfMonth(on),
        ...('segmentId' in lead.scope ? { segmentId: lead.scope.segmentId } : {}),
      },
      standing,
    );
  });
}
