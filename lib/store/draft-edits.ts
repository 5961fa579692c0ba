import 'server-only';
import { v7 as uuid } from 'uuid';
import { framesIn } from '#lib/cut/timecode';
import type { Offer, Offered, OfferedSegment } from '#lib/draft/offer';
import { lineFromReading } from '#lib/episode/line-from-reading';
import { matchQuery } from '#lib/episode/match-line';
import type { Segment } from '#lib/episode/schema';
import { UNSAID_STEP } from '#lib/episode/unsaid';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { lineColumns, UNSAID_SEGMENT_COLUMNS } from '#lib/store/episode-columns';
import { matchFoods } from '#lib/store/match-foods';
import { nextPlace, type Placed } from '#lib/store/next-place';

/** Where a draft goes. */
export interface DraftInto {
  readonly episodeId: string;
  readonly rate: { readonly num: number; readonly den: number };
  /** Segments that are there already. */
  readonly segments: readonly Segment[];
  /** Revisions by id; that of the episode among them. Empty where all of it is new. */
  readonly revs: Readonly<Record<string, number>>;
  /** The episode is made by the same act, with its hook, disclosure and links beside. */
  readonly fresh: boolean;
  readonly creatorId?: string;
}

type Part<K extends Offered['kind']> = Extract<Offered, { kind: K }>;

/**
 * The edits that add what was ticked of a draft: new segments behind those that are there, ingredients with their best
 * match, which is provisional unless the person has confirmed that food for these words before.
 */
export async function draftEdits(offer: Offer, into: DraftInto): Promise<Edit[]> {
  const edits: Edit[] = into.fresh ? [] : episodePatch(offer, into);
  const first = await placeIn('WebLink', into.episodeId, into);
  partsOf(offer.episode, 'link').forEach(({ label, url }, index) => {
    const row = { id: uuid(), episodeId: into.episodeId, position: first + index, label, url };
    edits.push({ op: 'create', entity: 'WebLink', row });
  });
  let position = await placeIn('Segment', into.episodeId, into);
  let tie = await placeIn('StepLink', into.episodeId, into);
  for (const segment of offer.segments) {
    const made = await segmentEdits(segment, into, position, tie);
    edits.push(...made.edits);
    position += segment.into === null ? 1 : 0;
    tie += made.ties;
  }
  return edits;
}

const partsOf = <K extends Offered['kind']>(parts: readonly Offered[], kind: K) =>
  parts.filter((part): part is Part<K> => part.kind === kind);

/** The place after the others; the first in what is only being made. */
async function placeIn(entity: Placed, parentId: string, { fresh }: DraftInto): Promise<number> {
  return fresh ? 0 : nextPlace(entity, parentId);
}

function episodePatch(offer: Offer, { episodeId, revs }: DraftInto): Edit[] {
  const patch = {
    ...Object.fromEntries(partsOf(offer.episode, 'hook').map(({ text }) => ['hook', text])),
    ...Object.fromEntries(
      partsOf(offer.episode, 'disclosure').map(({ text }) => ['disclosure', text]),
    ),
  };
  if (Object.keys(patch).length === 0) return [];
  return [{ op: 'update', entity: 'Episode', id: episodeId, rev: revs[episodeId] ?? 0, patch }];
}

async function segmentEdits(
  offered: OfferedSegment,
  into: DraftInto,
  position: number,
  firstTie: number,
): Promise<{ edits: Edit[]; ties: number }> {
  const { parts } = offered;
  const standing = into.segments.find(({ id }) => id === offered.into) ?? null;
  const segmentId = standing?.id ?? uuid();
  const recipeId = standing?.recipe?.id ?? (offered.kind === 'recipe' ? uuid() : null);
  const [times] = partsOf(parts, 'times');
  const [method] = partsOf(parts, 'method');
  const edits: Edit[] = [];
  const frames = times
    ? { inFrame: framesIn(times.inMs, into.rate), outFrame: outAt(times, into) }
    : null;
  if (standing) {
    const rev = into.revs[segmentId] ?? 0;
    if (frames) edits.push({ op: 'update', entity: 'Segment', id: segmentId, rev, patch: frames });
    if (method && recipeId !== null) {
      const patch = { method: method.text };
      edits.push({
        op: 'update',
        entity: 'Recipe',
        id: recipeId,
        rev: into.revs[recipeId] ?? 0,
        patch,
      });
    }
  } else {
    if (recipeId !== null) {
      const row = {
        id: recipeId,
        title: offered.title,
        method: method?.text ?? '',
        forkedFromId: null,
      };
      edits.push({ op: 'create', entity: 'Recipe', row });
    }
    const row = {
      ...newSegment(offered, recipeId),
      ...(frames ?? { inFrame: null, outFrame: null }),
      id: segmentId,
      episodeId: into.episodeId,
      position,
    };
    edits.push({ op: 'create', entity: 'Segment', row });
  }
  if (recipeId !== null) {
    const isNew = standing?.recipe === undefined || standing.recipe === null;
    edits.push(...(await portionEdits(parts, recipeId, isNew)));
    edits.push(...(await lineEdits(parts, recipeId, isNew, into.creatorId)));
  }
  const steps = stepEdits(parts, segmentId, into.episodeId, firstTie);
  return { edits: [...edits, ...steps.edits], ties: steps.ties };
}

function newSegment({ kind, title }: OfferedSegment, recipeId: string | null) {
  return {
    ...UNSAID_SEGMENT_COLUMNS,
    kind,
    title,
    recipeId,
    batchesNum: 1,
    batchesDen: 1,
    eatenNum: kind === 'recipe' ? 1 : 0,
    eatenDen: 1,
    plannedS: 0,
    spareTakes: 0,
    spareScope: 'spoiltLines' as const,
    washUpS: 0,
  };
}

function outAt({ inMs, outMs }: Part<'times'>, { rate }: DraftInto): number | null {
  if (outMs === null) return null;
  const frame = framesIn(outMs, rate);
  return frame > framesIn(inMs, rate) ? frame : null;
}

async function portionEdits(
  parts: readonly Offered[],
  recipeId: string,
  isNew: boolean,
): Promise<Edit[]> {
  const [portions] = partsOf(parts, 'portions');
  if (!portions) return [];
  const { count } = portions;
  const position = isNew ? 0 : await nextPlace('Portion', recipeId);
  const row = { id: uuid(), recipeId, position, kind: 'count' as const, massMg: null };
  return [
    { op: 'create', entity: 'Portion', row: { ...row, name: `one of ${count}`, ofCount: count } },
  ];
}

async function lineEdits(
  parts: readonly Offered[],
  recipeId: string,
  isNew: boolean,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Edit[]> {
  const read = partsOf(parts, 'line').flatMap(({ line }) => line.parts);
  if (read.length === 0) return [];
  const first = isNew ? 0 : await nextPlace('RecipeLine', recipeId);
  const matches = await matchFoods(read.map(matchQuery), creatorId);
  return read.map((part, index) => {
    const match = matches[index] ?? null;
    const line = {
      ...lineFromReading(part, match?.food ?? null),
      ...(match?.remembered ? { match: 'confirmed' as const } : {}),
      id: uuid(),
    };
    const place = { id: line.id, recipeId, position: first + index };
    const row = { ...lineColumns(line), ...place, madeFromId: null, madeFromRev: null };
    return { op: 'create', entity: 'RecipeLine', row };
  });
}

/** The steps in their order, each after the end of the one before it. The dish has none yet. */
function stepEdits(
  parts: readonly Offered[],
  segmentId: string,
  episodeId: string,
  firstTie: number,
): { edits: Edit[]; ties: number } {
  const steps = partsOf(parts, 'step').map(({ step }) => ({ id: uuid(), step }));
  const created = steps.map(({ id, step }, position): Edit => {
    const { key: _key, ...said } = step;
    const row = { ...UNSAID_STEP, ...said, id, segmentId, position };
    const unsaid = { chooseMinS: null, chooseMaxS: null, ovenId: null, restS: 0, onCamera: false };
    return { op: 'create', entity: 'Step', row: { ...row, ...unsaid, daylight: false } };
  });
  const ties = steps.slice(1).map(({ id }, index): Edit => {
    const place = { id: uuid(), episodeId, position: firstTie + index };
    const ends = { fromStepId: steps[index]?.id ?? id, toStepId: id };
    const rule = { fromAnchor: 'end' as const, toAnchor: 'start' as const, minLagS: 0 };
    return {
      op: 'create',
      entity: 'StepLink',
      row: { ...place, ...ends, ...rule, maxLagS: null, reason: 'as written' },
    };
  });
  return { edits: [...created, ...ties], ties: ties.length };
}
