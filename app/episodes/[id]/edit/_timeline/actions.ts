'use server';

import { revalidatePath } from 'next/cache';
import { captionOffers } from '#lib/cut/caption-offers';
import { pointsAtRate } from '#lib/cut/change-rate';
import { changesOf } from '#lib/cut/cut-points';
import { cutMends } from '#lib/cut/cut-mends';
import { listOffers } from '#lib/cut/list-offers';
import { takePoints, type OfferedPoints } from '#lib/cut/take-points';
import type { FrameRate } from '#lib/cut/timecode';
import { failed, ok, type Result } from '#lib/result';
import { reorderEdits } from '#lib/store/reorder-rows';
import { parseThenAct, typedTexts } from '../../../../_forms/parse-then-act';
import type { FormState } from '../../../../_ui/form/form-state';
import { change, reorder } from '../../change';
import { GONE } from '../refusals';
import { CHANGED, chapterEdit, OTHER_RATE, pointEdits } from './change-points';
import { pointsText, takeField } from './field-names';
import { pointsSent } from './points-sent';
import { readTimeline, type TimelineView } from './read-timeline';
import {
  captionsForm,
  listForm,
  mendForm,
  ownChapterForm,
  pointsForm,
  rateForm,
  type Sent,
} from './schema';

/** In- and out-points as they stand in the form. */
export async function savePoints(state: FormState, form: FormData): Promise<FormState> {
  let standing: string | null = null;
  const next = await parseThenAct(pointsForm, state, form, async (sent) => {
    const found = await timelineAt(sent.episodeId, sent.rate);
    if (!found.ok) return found;
    const { points, revs } = found.value;
    const typed = pointsSent(points, sent, sent.rate);
    if (!typed.ok) return typed;
    const changes = changesOf(points, typed.value);
    if (changes.length === 0) return ok('These times are there already.');
    if (pointsText(points) !== sent.shown) {
      standing = pointsText(points);
      return shownAnew(sent.episodeId, ELSEWHERE);
    }
    return change(sent.episodeId, 'Change where segments stand', pointEdits(changes, revs));
  });
  return standing === null ? next : { ...next, typed: { ...next.typed, shown: standing } };
}

const ELSEWHERE = failed({
  path: '',
  code: 'changed',
  message:
    'Times were changed elsewhere since you opened this, and nothing was overwritten. Yours stand in the fields: save again to keep them, or open the page anew to keep the others.',
});

/** How many frames a second the cut has, how they are numbered, and what becomes of points that are there. */
export async function saveRate(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(rateForm, state, form, async ({ episodeId, rev, rate, keeps }) => {
    const timeline = await readTimeline(episodeId);
    if (!timeline) return GONE;
    const { file, points, revs } = timeline;
    const { rate: own, dropFrame } = file.episode;
    const drops = rate.drop > 0;
    if (timeline.rate?.id === rate.id && dropFrame === drops) {
      return ok(`Frames are counted at ${rate.words} already.`);
    }
    const same = timeline.rate?.num === rate.num && timeline.rate.den === rate.den;
    const placed = points.some(({ inFrame, outFrame }) => inFrame !== null || outFrame !== null);
    if (!same && placed && keeps === null) return WHAT_STAYS;
    const moved = same ? points : pointsAtRate(points, own, rate, keeps ?? 'times');
    const patch = { rateNum: rate.num, rateDen: rate.den, dropFrame: drops };
    const label = `${same ? 'Number' : 'Count'} frames at ${rate.words}`;
    return change(episodeId, label, [
      { op: 'update', entity: 'Episode', id: episodeId, rev, patch },
      ...pointEdits(changesOf(points, moved), revs),
    ]);
  });
}

const WHAT_STAYS = failed({
  path: 'keeps',
  code: 'choose',
  message: 'Segments have places already: say what stays, their times or their frame counts.',
});

/** In-points where captions let segments begin, those that are ticked. */
export async function takeFromCaptions(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(captionsForm, state, form, async (sent) => {
    const found = await timelineAt(sent.episodeId, sent.rate);
    if (!found.ok) return found;
    const { points, sought, captions } = found.value;
    const own = captions.find(({ text }) => text.id === sent.textId);
    if (!own?.spoken) return GONE;
    const { offers } = captionOffers(points, sought, own.spoken.lines, sent.rate);
    const offered = offers.map(({ id, inFrame }) => ({ id, inFrame, outFrame: null }));
    if (pointsText(offered) !== sent.shown) return shownAnew(sent.episodeId, CHANGED);
    return take(found.value, offered, sent, `Take beginnings from ${own.text.name}`);
  });
}

/** Reads an edit list and offers its places; takes those that are ticked once the other button is pressed. */
export async function pasteList(state: FormState, form: FormData): Promise<FormState> {
  const taking = form.get('act') === 'take';
  let offer: string | null = null;
  const next = await parseThenAct(listForm, state, form, async (sent) => {
    const found = await timelineAt(sent.episodeId, sent.rate);
    if (!found.ok) return found;
    const { points } = found.value;
    const read = listOffers(points, sent.list, sent.rate);
    if (!read.ok) {
      const [first] = read.problems;
      return first ? failed({ ...first, path: 'list' }) : read;
    }
    offer = JSON.stringify(read.value);
    if (!taking) {
      const count = read.value.offers.length;
      const words = count === 1 ? 'One segment was' : `${count} segments were`;
      return ok(`${words} found in it. Nothing is taken before you say so.`);
    }
    if (pointsText(read.value.offers) !== sent.shown) return shownAnew(sent.episodeId, CHANGED);
    return take(found.value, read.value.offers, sent, 'Take places from an edit list');
  });
  if (offer === null || (next.problems.length === 0 && taking)) return next;
  // What was read stands in the form, with the list, until something is taken.
  return { ...next, round: state.round, typed: { ...typedTexts(form), offer } };
}

async function take(
  { file, points, revs }: TimelineView,
  offers: readonly OfferedPoints[],
  sent: Sent,
  label: string,
): Promise<Result<string>> {
  const ticked = offers.filter(({ id }) => sent[takeField(id)] === 'on');
  if (ticked.length === 0) {
    const message = 'Tick at least one of the places.';
    return failed({ path: '', code: 'none', message });
  }
  const changes = changesOf(points, takePoints(points, ticked));
  if (changes.length === 0) return ok('Those segments stand there already.');
  return change(file.episode.id, label, pointEdits(changes, revs));
}

/** Makes the chapters keep a rule that they break, by one of the ways that were offered. */
export async function takeMend(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(mendForm, state, form, async ({ episodeId, words }) => {
    const timeline = await readTimeline(episodeId);
    if (!timeline) return GONE;
    const { points, file, revs } = timeline;
    const mend = cutMends(points, file.episode.rate).find((one) => one.words === words);
    if (!mend) return shownAnew(episodeId, CHANGED);
    const { takes } = mend;
    const label = `Chapters: ${words}`;
    if (takes.kind === 'times') return change(episodeId, label, pointEdits(takes.changes, revs));
    if (takes.kind === 'join')
      return change(episodeId, label, [chapterEdit(takes.id, false, revs)]);
    return reorder(episodeId, label, () => reorderEdits('Segment', episodeId, takes.ids));
  });
}

/** Gives a joined segment its own chapter again. */
export async function ownChapter(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(ownChapterForm, state, form, async ({ episodeId, segmentId }) => {
    const timeline = await readTimeline(episodeId);
    const joined = timeline?.points.find(({ id }) => id === segmentId);
    if (!timeline || !joined) return GONE;
    if (joined.chapter !== false) return ok('It has its own chapter already.');
    const label = `Chapters: “${joined.title}” on its own`;
    return change(episodeId, label, [chapterEdit(segmentId, true, timeline.revs)]);
  });
}

/** The episode as it stands, if it still counts at the rate at which something was typed. */
async function timelineAt(episodeId: string, rate: FrameRate): Promise<Result<TimelineView>> {
  const timeline = await readTimeline(episodeId);
  if (!timeline) return GONE;
  const own = timeline.rate;
  return own?.num === rate.num && own.den === rate.den
    ? ok(timeline)
    : shownAnew(episodeId, OTHER_RATE);
}

/** A refusal for what has changed elsewhere: the page shows what stands there now. */
function shownAnew<T>(episodeId: string, refusal: T): T {
  revalidatePath(`/episodes/${episodeId}`, 'layout');
  return refusal;
}
