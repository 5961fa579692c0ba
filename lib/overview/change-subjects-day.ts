import {
  anchor,
  called,
  chosen,
  clock,
  degrees,
  field,
  measured,
  minutes,
  named,
  plain,
  runtime,
  ticked,
  titled,
  type JournalRow,
  type Telling,
} from '#lib/overview/change-fields';
import type { Subject } from '#lib/overview/change-subjects';
import { CONTACT_WORDS, FATE_WORDS, PART_WORDS, ROLE_WORDS } from '#lib/shoot/step-words';

const ofStep =
  (column: string) =>
  (row: JournalRow, { names }: Telling) =>
    names[plain(row[column])] ?? 'a step no longer listed';

/** The tables of what is done and filmed and of the filming day, in the words of the screen. */
export const DAY_SUBJECTS = {
  Step: {
    kind: ['step', 'steps'],
    place: 'segmentId',
    name: titled,
    placed: true,
    fields: [
      field('step', 'title'),
      chosen('kind', 'role', ROLE_WORDS),
      minutes('shortest', 'lowS'),
      minutes('usual', 'usualS'),
      minutes('longest', 'highS'),
      minutes('may take from', 'chooseMinS'),
      minutes('may take to', 'chooseMaxS'),
      ticked('takes the hands', 'hands'),
      measured('burners', 'burners', String),
      measured('racks', 'racks', String),
      named('oven', 'ovenId'),
      degrees('oven at', 'ovenMilliC'),
      degrees('inside temperature', 'coreMilliC'),
      minutes('rest', 'restS'),
      chosen('hands touch', 'contact', CONTACT_WORDS),
      ticked('the evening before', 'evening'),
      field('camera at', 'cameraSetUp'),
      named('runs in', 'applianceId'),
      measured('places on the counter', 'counter', String),
      ticked('camera', 'onCamera'),
      ticked('daylight', 'daylight'),
      field('note', 'note'),
    ],
    silent: ['id', 'segmentId'],
  },
  StepLink: {
    kind: ['tie', 'ties'],
    name: (row, telling) =>
      `${ofStep('toStepId')(row, telling)} after ${ofStep('fromStepId')(row, telling)}`,
    placed: true,
    fields: [
      anchor('from', 'fromStepId', 'fromAnchor'),
      anchor('to', 'toStepId', 'toAnchor'),
      minutes('at least', 'minLagS'),
      minutes('at most', 'maxLagS'),
      field('reason', 'reason'),
    ],
    silent: ['id', 'episodeId'],
  },
  Perishable: {
    kind: ['lot', 'lots'],
    place: 'segmentId',
    name: called,
    placed: true,
    fields: [
      field('name', 'name'),
      minutes('out at most', 'limitS'),
      ticked('for the picture only', 'thrownAway'),
    ],
    silent: ['id', 'segmentId'],
  },
  PerishableSpan: {
    kind: ['stretch', 'stretches'],
    place: 'perishableId',
    name: (row, telling) =>
      `from ${ofStep('fromStepId')(row, telling)} to ${ofStep('toStepId')(row, telling)}`,
    placed: true,
    fields: [anchor('from', 'fromStepId', 'fromAnchor'), anchor('to', 'toStepId', 'toAnchor')],
    silent: ['id', 'perishableId'],
  },
  Shot: {
    kind: ['shot', 'shots'],
    place: 'segmentId',
    name: titled,
    placed: true,
    fields: [
      field('shot', 'title'),
      named('got during', 'stepId'),
      field('framing', 'framing'),
      runtime('length', 'lengthS'),
    ],
    silent: ['id', 'segmentId'],
  },
  FilmingDay: {
    kind: ['filming day', 'filming days'],
    name: (row) => plain(row.date),
    fields: [
      field('date', 'date'),
      named('kitchen', 'kitchenId'),
      chosen('day', 'kind', { asLived: 'as lived', packed: 'packed' }),
      clock('begins', 'startMin'),
      clock('wrap by', 'wrapByMin'),
      measured('between meals', 'mealGapMin', (minute) => `${minute} min`),
      measured('from sunrise and sunset', 'lightMarginMin', (minute) => `${minute} min`),
      field('worn', 'outfit'),
    ],
    silent: ['id'],
  },
  DayEpisode: { kind: null, name: () => '', fields: [], silent: ['id', 'dayId', 'episodeId'] },
  DaySegment: {
    kind: ['place on the filming day', 'places on the filming day'],
    place: 'dayId',
    name: (row, { names }) => names[plain(row.segmentId)] ?? 'a dish no longer listed',
    placed: true,
    fields: [
      named('segment', 'segmentId'),
      ticked('pickup', 'pickup'),
      chosen('done that day', 'part', PART_WORDS),
      chosen('the food', 'fate', FATE_WORDS),
    ],
    silent: ['id', 'dayId'],
  },
  Appointment: {
    kind: ['appointment', 'appointments'],
    place: 'dayId',
    name: titled,
    placed: true,
    fields: [
      field('title', 'title'),
      clock('from', 'startMin'),
      clock('until', 'endMin'),
      ticked('takes the hands', 'hands'),
    ],
    silent: ['id', 'dayId'],
  },
  Pin: {
    kind: ['pinned time', 'pinned times'],
    place: 'dayId',
    name: ofStep('stepId'),
    placed: true,
    fields: [
      named('step', 'stepId'),
      clock('not before', 'notBeforeMin'),
      clock('not after', 'notAfterMin'),
    ],
    silent: ['id', 'dayId'],
  },
} as const satisfies Readonly<Record<string, Subject>>;
