import { z } from 'zod';
import { ENERGY_STEPS } from '#lib/episode/schema';
import { revision, rowId } from '../../_forms/fields';

export const writtenStepForm = z.object({
  episodeId: rowId,
  rev: revision,
  energyStep: z.coerce.number().pipe(z.literal(ENERGY_STEPS, { error: 'Choose 1, 5 or 10 kcal.' })),
});
