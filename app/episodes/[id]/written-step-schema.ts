import { z } from 'zod';
import { ENERGY_STEPS } from '#lib/episode/schema';
import { revision, rowId } from '../../_forms/fields';

const CHOOSE = 'Choose 1, 5 or 10 kcal.';

export const writtenStepForm = z.object({
  episodeId: rowId,
  rev: revision,
  energyStep: z.coerce.number({ error: CHOOSE }).pipe(z.literal(ENERGY_STEPS, { error: CHOOSE })),
});
