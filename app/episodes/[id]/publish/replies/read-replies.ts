import 'server-only';
import type { Reply } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { countedNutrients } from '#lib/figures/shown-nutrients';
import type { Nutrient } from '#lib/foods/nutrients';
import { oldNumbersIn, oldNumberWords } from '#lib/publish/correction/old-numbers';
import { numbersToPublish, type NumbersToPublish } from '#lib/publish/from-lock';
import { toldLock, type LockTold } from '#lib/publish/lock-words';
import { replyRows, type ReplyRow } from '#lib/publish/reply-list';
import { answerTo, type TheirNumber, type ViewerAnswer } from '#lib/publish/viewer-answer';
import { readComment } from '#lib/publish/viewer-comment';
import { readFoodVariants } from '#lib/store/read-food-variants';
import { readFoodVersions } from '#lib/store/read-foods';
import { readLastLock } from '#lib/store/read-locks';
import { readRevisedEpisode } from '#lib/store/read-revised-episode';
import type { ExplainOptions } from '#lib/swap/another-number';
import { pinnedOffers, type AnswerNow, type PinnedOffer } from '#lib/swap/pinned-offers';
import type { LastAct } from '../../_components/last-change';
import { correctedNumbers } from '../../corrections/told-correction';
import { lastAct } from '../../last-act';
import { readAskedSwap, type OfferedSwap } from './read-asked-swap';
import { numberFrom, ofFrom } from './reply-href';

/** The comment that stands open. */
export interface OpenReply {
  readonly reply: Reply;
  readonly answer: ViewerAnswer;
  /** Whether something was put right of the reading, or another difference is to be told: the draft answers that. */
  readonly asked: boolean;
  /** The swap that it asks for; null where it asks for none. */
  readonly swap: OfferedSwap | null;
}

/** A reply as the list shows it. */
export interface ListedReply extends ReplyRow {
  /** Numbers in it that were corrected since, in words; empty where there are none. */
  readonly old: string;
}

/** What the page of replies draws from. */
export interface RepliesPage {
  readonly file: EpisodeFile;
  /** How the numbers that replies are made of stand to the lock. */
  readonly lock: LockTold;
  readonly open: OpenReply | null;
  readonly nutrients: readonly Nutrient[];
  readonly rows: readonly ListedReply[];
  readonly page: number;
  readonly pages: number;
  readonly pinned: readonly PinnedOffer[];
  readonly revs: Readonly<Record<string, number>>;
  readonly last: LastAct | null;
}

/** What the address says, every part as typed. */
export type RepliesAsked = Readonly<
  Record<'reply' | 'number' | 'nutrient' | 'of' | 'slip' | 'page', string | null>
>;

/** The page of replies; null where the episode is gone. */
export async function readReplies(id: string, asked: RepliesAsked): Promise<RepliesPage | null> {
  const read = await readRevisedEpisode(id, new Date().toISOString(), { publish: true });
  if (!read) return null;
  const { file: live, revs } = read;
  const replies = live.publish?.replies ?? [];
  const reply = replies.find((each) => each.id === asked.reply) ?? null;
  const number = numberFrom(asked.number, asked.nutrient);
  const nutrients = nutrientsOf(live, reply, number);
  const snapshot = (await readLastLock(id))?.snapshot ?? null;
  const figures = episodeFigures(live, nutrients);
  const published = numbersToPublish(live, snapshot, figures);
  const { file } = published;
  const others = replies.length > 0 ? await othersOf(file) : NO_OTHERS;
  return {
    ...{ file, lock: toldLock(published), nutrients },
    open: reply && (await opened(published, others, reply, number, asked)),
    ...listed(live, replies, await correctedNumbers(id), Number(asked.page) || 1),
    pinned: pinnedOffers(file, replies, (each) => answerNow(published, others, each)),
    revs,
    last: await lastAct(live),
  };
}

type Others = Required<Pick<ExplainOptions, 'versions' | 'variants'>>;
const NO_OTHERS: Others = { versions: new Map(), variants: new Map() };

/** What is counted anyway, what viewers count besides, and what this comment speaks of. */
function nutrientsOf(file: EpisodeFile, reply: Reply | null, number: TheirNumber | null) {
  const said = reply ? readComment(reply.comment, []).map(({ nutrient }) => nutrient) : [];
  const own = [reply?.nutrient ?? null, number?.nutrient ?? null].flatMap((each) => each ?? []);
  return [
    ...new Set<Nutrient>([
      ...countedNutrients(file.episode),
      ...(['energyKj', 'netCarbohydrate'] as const),
      ...[...said, ...own],
    ]),
  ];
}

/** All readings of each label in the file, and each food leaner or fatter: a viewer's pack may be another one. */
async function othersOf({ foods }: EpisodeFile): Promise<Others> {
  const labels = foods.filter(({ kind }) => kind === 'label');
  const read = await Promise.all(labels.map(({ id }) => readFoodVersions(id)));
  const versions = new Map(labels.map(({ id }, at) => [id, read[at] ?? []]));
  return { versions, variants: await readFoodVariants(foods) };
}

async function opened(
  published: NumbersToPublish,
  others: Others,
  reply: Reply,
  number: TheirNumber | null,
  asked: RepliesAsked,
): Promise<OpenReply> {
  const of = ofFrom(asked.of);
  const kept = keptNumber(reply);
  const choice = {
    number: number ?? kept,
    segmentId: of?.segmentId ?? reply.segmentId,
    scope: of?.scope ?? null,
    slip: asked.slip ?? reply.slip,
  };
  const answer = answerTo(published, reply.comment, choice, others);
  const isAsked = [asked.number, asked.of, asked.slip].some((each) => each !== null);
  const swap = await readAskedSwap(published.file, reply.comment, answer);
  // What no number explains is answered by what the swap does.
  const draft = answer.draft || (swap?.sentence ?? '');
  return { reply, answer: { ...answer, draft }, asked: isAsked, swap };
}

/** One page of the replies, each with what of its numbers was corrected since. */
function listed(
  file: EpisodeFile,
  replies: readonly Reply[],
  corrected: Awaited<ReturnType<typeof correctedNumbers>>,
  page: number,
) {
  const segmentOf = new Map(replies.map(({ id, segmentId }) => [id, segmentId]));
  const found = replyRows(file, replies, page);
  const rows = found.rows.map((row): ListedReply => {
    const answer = { text: row.text, segmentId: segmentOf.get(row.id) ?? null };
    return { ...row, old: oldNumberWords(oldNumbersIn(answer, file, corrected)) };
  });
  return { ...found, rows };
}

/** A kept comment answered with the numbers that go out now, as it was read when its reply was saved. */
function answerNow(published: NumbersToPublish, others: Others, reply: Reply): AnswerNow {
  const { segmentId, slip, comment } = reply;
  const choice = { number: keptNumber(reply), segmentId, scope: null, slip };
  const { draft, slip: told, ours } = answerTo(published, comment, choice, others);
  return { draft, slip: told, ours: ours?.status === 'known' ? ours.number : null };
}

/** The number as it was saved, with the digits that the comment has where it is the same. */
function keptNumber({ nutrient, number, comment }: Reply): TheirNumber | null {
  if (nutrient === null || number === null) return null;
  const read = readComment(comment, []).find(
    (each) => each.nutrient === nutrient && each.amount === number,
  );
  const decimals = String(number).split('.')[1]?.length ?? 0;
  return read ?? { nutrient, amount: number, decimals, about: false };
}
