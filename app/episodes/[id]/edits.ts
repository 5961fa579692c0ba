import type { z } from 'zod';
import type { newSegmentForm } from './schema';

type SegmentTexts = Pick<
  z.output<typeof newSegmentForm>,
  'title' | 'planned' | 'batches' | 'spareTakes' | 'spareScope' | 'pickupReserve'
>;

/** The columns of a segment from its form. */
export function segmentColumns({ planned, batches, ...same }: SegmentTexts) {
  return {
    ...same,
    plannedS: planned,
    batchesNum: batches.num,
    batchesDen: batches.den,
  };
}
