import 'server-only';
import { createHash } from 'node:crypto';
import type { LeftOut } from '#lib/draft/draft';
import { fromWords } from '#lib/draft/from-words';
import { countOf, offerOf, type Offer } from '#lib/draft/offer';
import { outTextsOf } from '#lib/draft/out-texts';
import { readDraft } from '#lib/draft/read-draft';
import type { EpisodeFile } from '#lib/episode/schema';
import { madeOf, madeWords } from '#lib/overview/made-of';
import { readEpisodeFile } from '#lib/store/read-episode';
import type { DraftView, LeftView, OfferView } from './_components/view';

/** An episode with what its texts offer to it. */
export interface ReadOffer {
  readonly file: EpisodeFile;
  readonly offer: Offer;
  readonly left: readonly LeftOut[];
  /** Another one where the texts are others. */
  readonly version: string;
}

/** What the texts of an episode offer to it; null where there is no such episode. */
export async function readOffer(id: string): Promise<ReadOffer | null> {
  const file = await readEpisodeFile(id, new Date().toISOString(), { edit: true });
  if (!file) return null;
  const texts = outTextsOf(file.edit?.texts ?? []);
  const hash = createHash('sha256').update(JSON.stringify(texts));
  const read = readDraft(texts);
  return {
    file,
    offer: read.ok ? offerOf(read.value, file.episode) : { episode: [], segments: [] },
    left: read.ok ? read.value.left : [],
    version: hash.digest('hex').slice(0, 16),
  };
}

/** What the page draws. */
export async function readDraftPage(id: string): Promise<DraftView | null> {
  const read = await readOffer(id);
  if (!read) return null;
  const { file, offer, left, version } = read;
  return {
    episodeId: id,
    title: file.episode.title,
    version,
    hasTexts: (file.edit?.texts ?? []).length > 0,
    count: countOf(offer),
    made: madeWords(madeOf(file.episode)),
    episode: offer.episode.map(partView),
    segments: offer.segments.map(({ key, kind, title, from, into, parts }) => ({
      key,
      kind,
      title,
      isNew: into === null,
      from: fromWords(from),
      said: from.words,
      parts: parts.map(partView),
    })),
    left: left.map(leftView),
  };
}

function partView(part: Offer['episode'][number]): OfferView {
  const { key, kind, words, from } = part;
  const has = part.kind === 'line' ? part.has : null;
  return { key, kind, words, has, from: fromWords(from), said: from.words };
}

function leftView({ message, from, why }: LeftOut): LeftView {
  return { why, message, from: fromWords(from), said: from.words };
}
