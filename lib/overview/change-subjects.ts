import { STATE_WORDS } from '#lib/foods/state-words';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import {
  AMOUNT,
  anchor,
  chosen,
  clock,
  counted,
  degrees,
  field,
  grams,
  gramsRange,
  measured,
  minutes,
  moment,
  named,
  numeric,
  permille,
  plain,
  runtime,
  share,
  ticked,
  type Field,
  type JournalRow,
  type Telling,
} from '#lib/overview/change-fields';
import { LEFT_WORDS } from '#lib/episode/left-words';
import { LIST_WORDS } from '#lib/shopping/list-events';
import { EDIT_SUBJECTS } from '#lib/overview/change-subjects-edit';
import { PUBLISH_SUBJECTS } from '#lib/overview/change-subjects-publish';
import { FOOD_SUBJECTS } from '#lib/overview/change-subjects-foods';
import { OTHER_SUBJECTS } from '#lib/overview/change-subjects-others';
import {
  CONTACT_WORDS,
  FATE_WORDS,
  FILMED_WORDS,
  PART_WORDS,
  ROLE_WORDS,
} from '#lib/shoot/step-words';

/** What a reading is of, where it is not of an ingredient as its line says. */
const READING_WORDS: Readonly<Record<string, string>> = {
  cooked: ', cooked',
  left: ' left behind',
  finished: ', the finished dish',
  container: ', a container',
};

/** Nothing, grams with their range, or what a scale says. */
const LEFT_GRAMS = gramsRange('left behind', 'leftLowMg', 'leftMg', 'leftHighMg');
const LEFT_BEHIND: Field = {
  words: 'left behind',
  columns: ['leftKind', ...LEFT_GRAMS.columns],
  say: (row, telling) => (row.leftKind === 'weighed' ? 'weighed' : LEFT_GRAMS.say(row, telling)),
};

const LIMIT_WORDS: Readonly<Record<string, string>> = {
  atLeast: 'at least',
  atMost: 'at most',
  about: 'about',
};

/** A kind of row as a person knows it. */
export interface Subject {
  /** One, and several: "ingredient", "ingredients". Null for what a person never sees by itself. */
  readonly kind: readonly [string, string] | null;
  /** The column that names where it belongs, as a dish. */
  readonly place?: string;
  readonly name: (row: JournalRow, telling: Telling) => string;
  readonly fields: readonly Field[];
  /** Columns that a person never reads. */
  readonly silent: readonly string[];
  /** Stands after the others of its place; a change of it is a move. */
  readonly placed?: true;
}

const titled = (row: JournalRow) => plain(row.title);
const ofStep =
  (column: string) =>
  (row: JournalRow, { names }: Telling) =>
    names[plain(row[column])] ?? 'a step no longer listed';

/** Every table of an episode and its day, in the words of the screen. */
const EPISODE_SUBJECTS = {
  Episode: {
    kind: ['episode', 'episodes'],
    name: titled,
    fields: [
      field('title', 'title'),
      field('hook', 'hook'),
      field('numbers for', 'region'),
      field('publish on', 'publishOn'),
      share('frames a second', 'rateNum', 'rateDen'),
      field('frame numbers', 'dropFrame', (value) =>
        typeof value === 'boolean' ? (value ? 'drop frame' : 'non-drop') : '',
      ),
      {
        words: 'anything else today',
        columns: ['anythingElseKind', 'anythingElseWhat'],
        say: ({ anythingElseKind, anythingElseWhat }) =>
          anythingElseKind === 'nothing'
            ? 'nothing else'
            : anythingElseKind === 'notCounted'
              ? `not counted: ${plain(anythingElseWhat)}`
              : '',
      },
      field('given or paid', 'disclosure'),
      measured('calories are written to', 'energyStep', (step) => `${step} kcal`),
      named('kitchen', 'kitchenId'),
    ],
    silent: ['id'],
  },
  Segment: {
    kind: ['dish or talk', 'dishes and talks'],
    name: titled,
    placed: true,
    fields: [
      field('title', 'title'),
      chosen('kind', 'kind', { recipe: 'dish', talk: 'talk' }),
      share('made', 'batchesNum', 'batchesDen'),
      share('counts to the day', 'eatenNum', 'eatenDen'),
      chosen('eaten part known', 'ateKind', {
        share: 'exactly',
        byEye: 'by eye',
        mass: 'by weight',
      }),
      permille('by eye, may miss by', 'atePermille'),
      gramsRange('eaten', 'ateLowMg', 'ateMg', 'ateHighMg'),
      measured('begins in the cut at frame', 'inFrame', String),
      measured('ends in the cut before frame', 'outFrame', String),
      field('chapter', 'chapter', (value) =>
        typeof value === 'boolean' ? (value ? 'its own' : 'joined with the one before') : '',
      ),
      runtime('length in the cut', 'plannedS'),
      measured('spare takes', 'spareTakes', String),
      chosen('a spare take needs again', 'spareScope', {
        whole: 'the whole dish',
        spoiltLines: 'what a take spoils',
      }),
      measured('kept for pickups', 'pickupReserve', String),
      minutes('washing-up', 'washUpS'),
      chosen('filmed', 'filmedWhen', FILMED_WORDS),
      permille('of its protein counts', 'proteinPermille'),
      grams('reference amount', 'raccMg'),
      field('judged as a meal', 'claimsMeal', (value) =>
        typeof value === 'boolean' ? (value ? 'yes' : 'no') : '',
      ),
    ],
    silent: ['id', 'episodeId', 'recipeId'],
  },
  Recipe: {
    kind: null,
    name: titled,
    fields: [
      field('title', 'title'),
      field('method', 'method'),
      permille('water in cooking', 'moisturePermille'),
      permille('fat in cooking', 'fatPermille'),
      permille('the two may miss by', 'cookingSpreadPermille'),
      field('says who', 'cookingSource'),
    ],
    silent: ['id', 'forkedFromId'],
  },
  RecipeLine: {
    kind: ['ingredient', 'ingredients'],
    place: 'recipeId',
    name: (row) => plain(row.text),
    placed: true,
    fields: [
      field('words', 'text'),
      AMOUNT,
      field('measure', 'measureName'),
      named('counted as', 'foodId'),
      chosen('food', 'match', { confirmed: 'confirmed', provisional: 'proposed, not confirmed' }),
      named('or', 'orFoodId'),
      named('made from', 'madeFromId'),
      chosen('weighed', 'state', STATE_WORDS),
      ticked('with peel, shell or ends', 'asBought'),
      gramsRange('grams', 'plannedLowMg', 'plannedMg', 'plannedHighMg'),
      LEFT_BEHIND,
      chosen('left in', 'leftWhere', LEFT_WORDS),
      chosen('left of it', 'leftMade', { alike: 'the same', fat: 'its fat' }),
      field('cooked by', 'cookMethod'),
      field('retention code', 'retention'),
      counted('values bounded by you', 'bounded'),
      ticked('a second take needs it again', 'spoiltByTake'),
      field('note', 'note'),
      field('for the shop', 'shopNote'),
    ],
    silent: ['id', 'recipeId', 'madeFromRev'],
  },
  Weighing: {
    kind: ['reading', 'readings'],
    place: 'recipeId',
    name: ({ grossMg, tareMg, kind }) => {
      const net = (numeric(grossMg) ?? 0) - (numeric(tareMg) ?? 0);
      return `${net / 1000} g${READING_WORDS[plain(kind)] ?? ''}`;
    },
    fields: [
      chosen('of', 'kind', {
        raw: 'an ingredient',
        cooked: 'an ingredient, cooked',
        left: 'what stayed behind',
        finished: 'the finished dish',
        container: 'a container',
      }),
      grams('on the scale', 'grossMg'),
      grams('container', 'tareMg'),
      named('scale', 'scaleId'),
      chosen('how', 'method', { direct: 'direct', difference: 'by difference' }),
      moment('at', 'at'),
    ],
    silent: ['id', 'recipeId', 'afterId'],
  },
  WeighingShare: {
    kind: null,
    name: (row, { names }) => names[plain(row.lineId)] ?? '',
    fields: [named('ingredient', 'lineId'), share('share', 'num', 'den')],
    silent: ['id', 'weighingId'],
    placed: true,
  },
  Portion: {
    kind: ['portion', 'portions'],
    place: 'recipeId',
    name: (row) => plain(row.name),
    placed: true,
    fields: [
      field('name', 'name'),
      chosen('size', 'kind', { count: 'equal portions', mass: 'grams', byEye: 'by eye' }),
      measured('of equal portions', 'ofCount', String),
      grams('of the finished dish', 'massMg'),
      share('share', 'shareNum', 'shareDen'),
      permille('may miss by', 'permille'),
    ],
    silent: ['id', 'recipeId'],
  },
  Target: {
    kind: ['target', 'targets'],
    name: ({ relation, amount, nutrient }) => {
      const { unit, label } = NUTRIENTS[nutrient as Nutrient] ?? { unit: '', label: '' };
      const limit = LIMIT_WORDS[plain(relation)] ?? '';
      return `${limit} ${plain(amount)} ${unit} ${label}`;
    },
    placed: true,
    fields: [
      field('of', 'nutrient', (value) => NUTRIENTS[value as Nutrient]?.label ?? ''),
      chosen('keep to', 'relation', LIMIT_WORDS),
      measured('how much', 'amount', String),
      named('in', 'segmentId'),
      named('portion', 'portionId'),
    ],
    silent: ['id', 'episodeId'],
  },
  WebLink: {
    kind: ['web link', 'web links'],
    name: (row) => plain(row.label),
    placed: true,
    fields: [field('name', 'label'), field('address', 'url')],
    silent: ['id', 'episodeId'],
  },
  TalkingPoint: {
    kind: ['sentence', 'sentences'],
    place: 'segmentId',
    name: (row) => plain(row.text),
    placed: true,
    fields: [field('to say', 'text')],
    silent: ['id', 'segmentId'],
  },
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
    name: (row) => plain(row.name),
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
  DayEvent: {
    kind: ['entry of the day', 'entries of the day'],
    place: 'dayId',
    name: (row) => plain(row.kind),
    fields: [field('entry', 'kind'), moment('at', 'at')],
    silent: ['id', 'dayId', 'deviceId', 'deviceSeq', 'refs', 'payload'],
  },
  NumbersLock: {
    kind: ['numbers lock', 'numbers locks'],
    name: (row) => `no. ${plain(row.seq)}`,
    fields: [measured('number', 'seq', String), moment('at', 'at')],
    silent: ['id', 'episodeId', 'snapshot', 'sha256', 'schemaVersion', 'engineVersion'],
  },
  Published: {
    kind: ['copied description', 'copied descriptions'],
    name: (row) => (/^[^\n]*/.exec(plain(row.text)) ?? [''])[0],
    fields: [
      field('text', 'text'),
      chosen('form', 'form', { plain: 'plain text', markdown: 'Markdown', html: 'HTML' }),
      moment('at', 'at'),
    ],
    silent: ['id', 'lockId'],
  },
  Correction: {
    kind: ['correction', 'corrections'],
    name: (row) => plain(row.reason),
    fields: [field('reason', 'reason'), field('on', 'on')],
    silent: ['id', 'oldLockId', 'newLockId'],
  },
  Tick: {
    kind: ['tick of the shopping list', 'ticks of the shopping list'],
    name: (row, { names }) => names[plain(row.foodId)] ?? '',
    fields: [named('food', 'foodId'), chosen('entry', 'kind', LIST_WORDS), moment('at', 'at')],
    silent: ['id', 'scope', 'episodeId', 'deviceId', 'deviceSeq', 'payload'],
  },
  Draft: {
    kind: ['text that was typed and not saved', 'texts that were typed and not saved'],
    place: 'entityId',
    name: draftWords,
    fields: [{ words: 'typed', columns: ['payload'], say: draftWords }, moment('at', 'at')],
    silent: ['id', 'entity', 'entityId', 'baseRev'],
  },
} as const satisfies Readonly<Record<string, Subject>>;

/** What the program sends along, and no person types. */
const SENT_ALONG =
  /Id$|-|^(rev|kind|measuresOf|match|state|unit|leftKind|leftWhere|leftMade|leftWeighed|asBought|spoiltByTake)$/;

/** The id of a row, as the choice of a food sends it. */
const LOOKS_LIKE_ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-/;

/** What was typed into a form and refused, each text as it was typed; of a row's columns only its words. */
export function draftWords({ payload }: JournalRow): string {
  try {
    const kept = JSON.parse(plain(payload)) as { readonly texts?: object } | null;
    const texts = Object.entries(kept?.texts ?? kept ?? {}).filter(
      ([name, value]) =>
        typeof value === 'string' &&
        value !== '' &&
        !SENT_ALONG.test(name) &&
        !LOOKS_LIKE_ID.test(value),
    );
    return texts.map(([, value]) => plain(value)).join(', ');
  } catch {
    return plain(payload);
  }
}

/** Every table, in the words of the screen. */
export const SUBJECTS: Readonly<Record<string, Subject>> = {
  ...EPISODE_SUBJECTS,
  ...EDIT_SUBJECTS,
  ...PUBLISH_SUBJECTS,
  ...FOOD_SUBJECTS,
  ...OTHER_SUBJECTS,
};
