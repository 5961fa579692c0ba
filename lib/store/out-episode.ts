import 'server-only';
import { v7 as uuid } from 'uuid';
import type { Draft } from '#lib/draft/draft';
import { nothingYet, offerOf } from '#lib/draft/offer';
import type { EditText } from '#lib/episode/edit-schema';
import type { Create, Edit } from '#lib/store/command';
import { draftEdits } from '#lib/store/draft-edits';

/** What an episode is called that nothing names. */
const UNTITLED = 'An episode that is out';
const RATE = { num: 25, den: 1 };

export interface OutEpisode {
  readonly episodeId: string;
  readonly region: 'US' | 'EU';
  readonly draft: Draft;
  /** The texts themselves, kept so that what they say can be held against the ingredients. */
  readonly texts: readonly Omit<EditText, 'id'>[];
  readonly creatorId?: string;
}

/** What the episode of a draft is called: its title, else its first dish, else that it has none. */
export function outTitle({ title, segments }: Draft): string {
  const dish = segments.find(({ kind }) => kind === 'recipe');
  return title?.text || dish?.title || UNTITLED;
}

/**
 * The edits that make an episode of all that a draft proposes, with the texts it was read from. Every ingredient has
 * its best match, counted and not confirmed.
 */
export async function outEpisodeEdits(of: OutEpisode): Promise<Edit[]> {
  const { episodeId, region, draft, texts, creatorId } = of;
  const episode: Create<'Episode'> = {
    op: 'create',
    entity: 'Episode',
    row: {
      id: episodeId,
      title: outTitle(draft),
      hook: draft.hook?.text ?? '',
      region,
      publishOn: null,
      rateNum: RATE.num,
      rateDen: RATE.den,
      anythingElseKind: null,
      anythingElseWhat: null,
      disclosure: draft.disclosure?.text ?? '',
      kitchenId: null,
    },
  };
  const into = { episodeId, rate: RATE, segments: [], revs: {}, fresh: true };
  const added = await draftEdits(offerOf(draft, nothingYet(region)), {
    ...into,
    ...(creatorId === undefined ? {} : { creatorId }),
  });
  const kept = texts.map((text, position): Edit => {
    const row = { ...text, id: uuid(), episodeId, position };
    return { op: 'create', entity: 'EditText', row };
  });
  return [episode, ...added, ...kept];
}
