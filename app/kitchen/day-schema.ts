import { z } from 'zod';
import { SHOT_MOMENTS } from '#lib/episode/kitchen-schema';
import { optionalText, requiredText, revision, rowId, runtime } from '../_forms/fields';
import { minutes, optionalMinutes, optionalWhole, whole } from '../_forms/number-fields';

const DAY_S = 86_400;

/** What the filming day counts of this kitchen. */
export const countsForm = z.object({
  kitchenId: rowId,
  rev: revision,
  cameraChange: optionalMinutes(DAY_S),
  counterPlaces: optionalWhole(1, 24),
  cleanDown: minutes('how long cleaning down takes', DAY_S),
  videoMbps: optionalWhole(1, 10_000),
});

const applianceTexts = {
  name: requiredText('what it is called', 80),
  places: whole('how many things it takes at a time', 1, 12),
};

export const newApplianceForm = z.object({ kitchenId: rowId, ...applianceTexts });
export const applianceForm = z.object({ applianceId: rowId, rev: revision, ...applianceTexts });

const houseShotTexts = {
  title: requiredText('what is to be seen', 200),
  moment: z.enum(SHOT_MOMENTS, { error: 'Choose when it is got.' }),
  framing: optionalText(80),
  length: runtime.transform((seconds) => seconds ?? 0),
};

export const newHouseShotForm = z.object({ kitchenId: rowId, ...houseShotTexts });
export const houseShotForm = z.object({ shotId: rowId, rev: revision, ...houseShotTexts });

export const moveHouseShotForm = z.object({
  kitchenId: rowId,
  shotId: rowId,
  to: z.enum(['up', 'down'], { error: 'Choose up or down.' }),
});

export const beginHouseShotsForm = z.object({ kitchenId: rowId });
