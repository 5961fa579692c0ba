import type { z } from 'zod';
import type { RecipeLine, Weighing } from '#lib/episode/schema';
import { lineColumns } from '#lib/store/episode-columns';
import type { lineForm, newSegmentForm, weighLineForm } from './schema';

type LineTexts = Omit<z.output<typeof lineForm>, 'episodeId' | 'lineId' | 'rev'>;
type NewLineTexts = Omit<LineTexts, 'measureName' | 'measuresOf'>;

/** An ingredient from its form. A unit without an amount is none. */
function recipeLine(id: string, texts: LineTexts): RecipeLine {
  const { quantity, unit, grams, leftBehind, measureName, measuresOf, ...rest } = texts;
  return {
    ...rest,
    id,
    // Whoever saves the form has seen the food that it names.
    match: 'confirmed',
    orFoodId: null,
    madeFrom: null,
    cookMethod: null,
    retention: null,
    bounded: [],
    quantity,
    unit: quantity ? unit : null,
    // The names are those of one food: another's would mean nothing, or something else.
    measureName: texts.foodId === measuresOf ? measureName : null,
    planned: grams,
    leftBehind: leftBehind
      ? { kind: 'mass', ...leftBehind, where: 'pan', made: 'alike' }
      : { kind: 'none' },
  };
}

/** The columns of a new ingredient. It means the first of the food's measures that fits. */
export function newLineColumns(id: string, texts: NewLineTexts) {
  const line = recipeLine(id, { ...texts, measureName: null, measuresOf: null });
  return { ...lineColumns(line), madeFromId: null, madeFromRev: null };
}

/** The columns of an ingredient that its form changes. */
export function linePatch(id: string, texts: LineTexts) {
  // What has forms of its own stays as it is.
  const {
    cookMethod: _,
    retention: __,
    bounded: ___,
    ...columns
  } = lineColumns(recipeLine(id, texts));
  return columns;
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
  'title' | 'planned' | 'eaten' | 'batches' | 'spareTakes' | 'spareScope'
>;

/** The columns of a segment from its form. */
export function segmentColumns({ planned, eaten, batches, ...same }: SegmentTexts) {
  return {
    ...same,
    plannedS: planned,
    eatenNum: eaten.num,
    eatenDen: eaten.den,
    batchesNum: batches.num,
    batchesDen: batches.den,
  };
}

type ReadingTexts = Omit<z.output<typeof weighLineForm>, 'episodeId' | 'lineId'>;

/** The columns of a reading from its form. */
export function readingColumns(
  kind: Weighing['kind'],
  { gross, tare, ...on }: ReadingTexts,
  at: Date,
) {
  return { kind, grossMg: gross, tareMg: tare, ...on, at };
}
