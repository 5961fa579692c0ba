import { STATE_WORDS } from '#lib/foods/state-words';
import { LEFT_WORDS } from '#lib/episode/left-words';
import {
  AMOUNT,
  called,
  chosen,
  counted,
  field,
  grams,
  gramsRange,
  measured,
  moment,
  named,
  numeric,
  permille,
  plain,
  share,
  ticked,
  titled,
  type Field,
} from '#lib/overview/change-fields';
import type { Subject } from '#lib/overview/change-subjects';

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

/** The tables of a recipe, in the words of the screen. */
export const RECIPE_SUBJECTS = {
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
    name: called,
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
} as const satisfies Readonly<Record<string, Subject>>;
