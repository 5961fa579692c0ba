import type { z } from 'zod';
import type { RecipeLine } from '#lib/episode/schema';
import { lineColumns } from '#lib/store/episode-columns';
import type { lineForm, newSegmentForm } from './schema';

type LineTexts = Omit<z.output<typeof lineForm>, 'episodeId' | 'lineId' | 'rev'>;

/** An ingredient from its form. A unit without an amount is none. */
function recipeLine(id: string, texts: LineTexts): RecipeLine {
  const { quantity, unit, grams, leftBehind, ...rest } = texts;
  return {
    ...rest,
    id,
    quantity,
    unit: quantity ? unit : null,
    measureName: null,
    planned: grams,
    leftBehind: leftBehind ? { kind: 'mass', ...leftBehind } : { kind: 'none' },
  };
}

/** The columns of a new ingredient. */
export function newLineColumns(id: string, texts: LineTexts) {
  return { ...lineColumns(recipeLine(id, texts)), madeFromId: null, madeFromRev: null };
}

/** The columns of an ingredient that its form changes; which of the food's measures it means stays. */
export function linePatch(id: string, texts: LineTexts) {
  const { measureName: _kept, ...patch } = lineColumns(recipeLine(id, texts));
  return patch;
}

/** The form's field for a column that the store refuses. */
export function lineField(column: string): string {
  if (column.startsWith('planned')) return 'grams';
  if (column.startsWith('left')) return 'leftBehind';
  if (/^(low|high)/.test(column)) return 'quantity';
  return column;
}

type SegmentTexts = Pick<
  z.output<typeof newSegmentForm>,
  'title' | 'planned' | 'eaten' | 'batches'
>;

/** The columns of a segment from its form. */
export function segmentColumns({ title, planned, eaten, batches }: SegmentTexts) {
  return {
    title,
    plannedS: planned,
    eatenNum: eaten.num,
    eatenDen: eaten.den,
    batchesNum: batches.num,
    batchesDen: batches.den,
  };
}
