import 'server-only';
import { database } from '#lib/store/client';

/** Tables whose new rows stand after the others of their parent, and the column that names the parent. */
const PARENTS = {
  Segment: 'episodeId',
  RecipeLine: 'recipeId',
  Portion: 'recipeId',
  TalkingPoint: 'segmentId',
  Step: 'segmentId',
  StepLink: 'episodeId',
  Shot: 'segmentId',
  WebLink: 'episodeId',
  DaySegment: 'dayId',
  AllergenFact: 'foodId',
  Oven: 'kitchenId',
  OvenChange: 'ovenId',
  Scale: 'kitchenId',
  MeasureSpread: 'kitchenId',
} as const;

export type Placed = keyof typeof PARENTS;

interface Asked {
  aggregate(args: object): Promise<{ readonly _max: { readonly position: number | null } }>;
}

/** The place after the last row of a parent, removed ones included, so that none is taken twice; 0 for the first. */
export async function nextPlace(entity: Placed, parentId: string): Promise<number> {
  const name = `${entity.charAt(0).toLowerCase()}${entity.slice(1)}`;
  const table = (database() as unknown as Record<string, Asked>)[name] as Asked;
  const { _max } = await table.aggregate({
    where: { [PARENTS[entity]]: parentId },
    _max: { position: true },
  });
  return _max.position === null ? 0 : _max.position + 1;
}
