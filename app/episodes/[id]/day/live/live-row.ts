import type { Episode, Oven } from '#lib/episode/schema';
import { rowKey, rowRefOf, type RowRef } from '#lib/shoot/day-log';
import type { DaySheet } from '#lib/shoot/day-sheet';
import { clockText } from '#lib/shoot/day-words';
import type { OrderRow } from '#lib/shoot/now-and-next';
import { placeWords } from '#lib/shoot/step-words';
import { edgeOf, rowFacts } from '../_components/row-facts';

/** A row of the shooting order with its words, as it goes to the device that shows it. */
export interface LiveRow extends OrderRow {
  readonly ref: RowRef;
  readonly key: string;
  readonly title: string;
  readonly segmentTitle: string | null;
  /** Planned start and end. */
  readonly from: string;
  readonly to: string;
  readonly place: string;
  readonly facts: readonly string[];
  readonly remarks: readonly string[];
  /** The classes of its edge. */
  readonly edge: string;
}

/** The rows of a day sheet, in its order. */
export function liveRows(
  sheet: DaySheet,
  ovens: readonly Oven[],
  region: Episode['region'],
): LiveRow[] {
  return sheet.rows.map((row) => {
    const { id, kind, stepId, startMin, endMin, hands, ovenId, title } = row.entry;
    const ref = rowRefOf(row.entry);
    return {
      entry: { id, kind, stepId, startMin, endMin, hands, ovenId },
      ref,
      key: rowKey(ref),
      title,
      segmentTitle: kind === 'step' ? row.segmentTitle : null,
      from: clockText(startMin),
      to: clockText(endMin),
      place: placeWords(row.entry, ovens, region),
      facts: rowFacts(row, region),
      remarks: row.remarks,
      edge: edgeOf(row),
    };
  });
}
