import { z } from 'zod';
import { SHELF_UNITS } from '#lib/episode/stock-schema';
import { SECTIONS } from '#lib/foods/food';
import { requiredText, revision, rowId } from '../_forms/fields';
import { percent } from '../_forms/number-fields';

/** How shelf labels say amounts, and how far prices move in a year. */
export const shelfForm = z.object({
  kitchenId: rowId,
  rev: revision,
  shelfUnits: z.enum(SHELF_UNITS, { error: 'Choose how shelf labels say amounts.' }),
  drift: percent('how far prices move in a year'),
});

const shopTexts = { name: requiredText('what the shop is called', 120) };

export const newShopForm = z.object(shopTexts);
export const shopForm = z.object({ shopId: rowId, rev: revision, ...shopTexts });
export const removeShopForm = z.object({ shopId: rowId, rev: revision });

export const moveSectionForm = z.object({
  shopId: rowId,
  section: z.enum(SECTIONS, { error: 'Choose a part of the shop.' }),
  to: z.enum(['up', 'down'], { error: 'Choose up or down.' }),
});
