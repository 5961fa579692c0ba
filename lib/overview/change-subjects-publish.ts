import {
  called,
  chosen,
  field,
  grams,
  measured,
  moment,
  named,
  plain,
  ticked,
  titled,
  type JournalRow,
  type Telling,
} from '#lib/overview/change-fields';
import type { Subject } from '#lib/overview/change-subjects';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { STATE_WORDS } from '#lib/foods/state-words';

const STEP_WORDS: Readonly<Record<string, string>> = {
  food: 'another food',
  amount: 'another amount',
  leaveOut: 'left out',
  add: 'added',
};

/** What a swap does: "another food: Cream, light, for Cream, heavy". */
function stepWords({ kind, lineId, foodId }: JournalRow, { names }: Telling): string {
  const of = [foodId, lineId].flatMap((id) => (typeof id === 'string' ? (names[id] ?? []) : []));
  return [STEP_WORDS[plain(kind)] ?? plain(kind), of.join(' for ')].filter(Boolean).join(': ');
}

const firstLine = (value: unknown) => (/^[^\n]*/.exec(plain(value)) ?? [''])[0];

/** The tables of what an episode has for going out, in the words of the screen. */
export const PUBLISH_SUBJECTS = {
  Variant: {
    kind: ['saved swap', 'saved swaps'],
    name: called,
    fields: [field('name', 'name')],
    silent: ['id', 'episodeId', 'segmentId'],
  },
  SwapStep: {
    kind: ['step of a swap', 'steps of swaps'],
    place: 'variantId',
    name: stepWords,
    placed: true,
    fields: [
      chosen('does', 'kind', STEP_WORDS),
      named('ingredient', 'lineId'),
      named('food', 'foodId'),
      grams('amount', 'massMg'),
      chosen('weighed', 'state', STATE_WORDS),
    ],
    silent: ['id', 'variantId'],
  },
  Reply: {
    kind: ['reply', 'replies'],
    name: (row) => firstLine(row.text) || firstLine(row.comment),
    fields: [
      field('comment', 'comment'),
      field('reply', 'text'),
      field('nutrient', 'nutrient', (value) => NUTRIENTS[plain(value) as Nutrient]?.label ?? ''),
      measured('the viewer’s number', 'number', String),
      named('dish', 'segmentId'),
      moment('at', 'at'),
    ],
    silent: ['id', 'episodeId', 'slip'],
  },
  Piece: {
    kind: ['piece', 'pieces'],
    name: titled,
    placed: true,
    fields: [
      chosen('kind', 'kind', { clip: 'vertical clip', text: 'short text' }),
      field('title', 'title'),
      ticked('of the whole day', 'ofDay'),
      measured('length limit', 'limit', String),
    ],
    silent: ['id', 'episodeId'],
  },
  PieceSegment: {
    kind: ['dish of a piece', 'dishes of pieces'],
    place: 'pieceId',
    name: (row, { names }) => names[plain(row.segmentId)] ?? 'a dish no longer listed',
    placed: true,
    fields: [named('dish', 'segmentId')],
    silent: ['id', 'pieceId'],
  },
} as const satisfies Readonly<Record<string, Subject>>;
