import 'server-only';
import { v7 as uuid } from 'uuid';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { UNSAID_SEGMENT_COLUMNS } from '#lib/store/episode-columns';
import { ALIVE } from '#lib/store/load';

export interface ShortEpisode {
  readonly episodeId: string;
  readonly recipeId: string;
  readonly title: string;
  readonly region: 'US' | 'EU';
  /** Into how many equal portions the dish goes. */
  readonly portions: number;
  /** The dish's ingredients, which name its recipe. */
  readonly lines: readonly Edit[];
}

/**
 * The edits that make an episode of one dish: no date, step, kitchen or target, all of which may follow.
 * @example shortEpisodeEdits({ …, title: 'Oat bowl', portions: 2 }) // episode, recipe, segment, portion, lines
 */
export function shortEpisodeEdits(of: ShortEpisode): readonly Edit[] {
  const { episodeId, recipeId, title, region, portions, lines } = of;
  const portion: Edit = {
    op: 'create',
    entity: 'Portion',
    row: {
      id: uuid(),
      recipeId,
      position: 0,
      kind: 'count',
      name: `one of ${portions}`,
      ofCount: portions,
      massMg: null,
    },
  };
  return [
    {
      op: 'create',
      entity: 'Episode',
      row: {
        id: episodeId,
        title,
        hook: '',
        region,
        publishOn: null,
        rateNum: 25,
        rateDen: 1,
        anythingElseKind: null,
        anythingElseWhat: null,
        disclosure: '',
        kitchenId: null,
      },
    },
    {
      op: 'create',
      entity: 'Recipe',
      row: { id: recipeId, title, method: '', forkedFromId: null },
    },
    {
      op: 'create',
      entity: 'Segment',
      row: {
        ...UNSAID_SEGMENT_COLUMNS,
        id: uuid(),
        episodeId,
        position: 0,
        kind: 'recipe',
        title,
        recipeId,
        batchesNum: 1,
        batchesDen: 1,
        eatenNum: 1,
        eatenDen: 1,
        inFrame: null,
        outFrame: null,
        plannedS: 0,
        spareTakes: 0,
        spareScope: 'spoiltLines',
        washUpS: 0,
      },
    },
    ...(portions === 1 ? [] : [portion]),
    ...lines,
  ];
}

/** The region of the episode that was begun last; US where there is none yet. */
export async function lastRegion(creatorId = DEFAULT_CREATOR_ID): Promise<'US' | 'EU'> {
  const last = await database().episode.findFirst({
    where: { creatorId, ...ALIVE },
    orderBy: { id: 'desc' },
    select: { region: true },
  });
  return last?.region === 'EU' ? 'EU' : 'US';
}
