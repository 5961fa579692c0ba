import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import {
  chosen,
  field,
  grams,
  gramsRange,
  measured,
  minutes,
  moment,
  named,
  permille,
  plain,
  runtime,
  share,
  titled,
  type Field,
  type JournalRow,
  type Telling,
} from '#lib/overview/change-fields';
import { LIST_WORDS } from '#lib/shopping/list-events';
import { DAY_SUBJECTS } from '#lib/overview/change-subjects-day';
import { EDIT_SUBJECTS } from '#lib/overview/change-subjects-edit';
import { PUBLISH_SUBJECTS } from '#lib/overview/change-subjects-publish';
import { FOOD_SUBJECTS } from '#lib/overview/change-subjects-foods';
import { OTHER_SUBJECTS } from '#lib/overview/change-subjects-others';
import { RECIPE_SUBJECTS } from '#lib/overview/change-subjects-recipe';
import { FILMED_WORDS } from '#lib/shoot/step-words';

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

/** The tables of an episode and of what was kept of it, in the words of the screen. */
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
  ...RECIPE_SUBJECTS,
  ...DAY_SUBJECTS,
  ...EDIT_SUBJECTS,
  ...PUBLISH_SUBJECTS,
  ...FOOD_SUBJECTS,
  ...OTHER_SUBJECTS,
};
