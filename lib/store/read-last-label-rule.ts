import 'server-only';
import { ROUNDING_RULES } from '#lib/foods/food-lists';
import type { RoundingRule } from '#lib/foods/food';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE } from '#lib/store/load';

/** The rounding rule of the label that was entered last, by the time in its id; null before the first. */
export async function readLastLabelRule(
  creatorId = DEFAULT_CREATOR_ID,
): Promise<RoundingRule | null> {
  const last = await database().foodVersion.findFirst({
    where: { creatorId, ...ALIVE, dateRead: { not: null } },
    orderBy: { id: 'desc' },
    select: { rule: true },
  });
  return ROUNDING_RULES.find((rule) => rule === last?.rule) ?? null;
}
