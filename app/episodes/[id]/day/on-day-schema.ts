import { z } from 'zod';
import { FATES } from '#lib/episode/day-schema';
import { revision, rowId } from '../../../_forms/fields';

const filmedWhen = z
  .enum(['', 'beforeDirty', 'afterReady'], { error: 'Choose when it is filmed.' })
  .transform((when) => when || null);

/** A segment on its filming day: what of it is done, when it is filmed, what becomes of its food. */
export const onDayForm = z.object({
  episodeId: rowId,
  segmentId: rowId,
  /** The segment's place on the day. */
  placeId: rowId,
  rev: revision,
  part: z.enum(['all', 'cook', 'film'], { error: 'Choose what of it is done that day.' }),
  fate: z
    .enum(['', ...FATES], { error: 'Choose what becomes of the food.' })
    .default('')
    .transform((fate) => fate || null),
  filmedWhen,
  /** What the form showed, so that a change made elsewhere is not overwritten. */
  wasFilmedWhen: filmedWhen,
});
