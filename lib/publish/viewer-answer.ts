import { dishesOf, type Dish } from '#lib/episode/context';
import type { PublishedNumber } from '#lib/figures/published-numbers';
import type { NumbersToPublish } from '#lib/publish/from-lock';
import { readComment, type CommentNumber } from '#lib/publish/viewer-comment';
import {
  explainNumber,
  type AnotherNumber,
  type Explained,
  type ExplainOptions,
} from '#lib/swap/another-number';
import type { SumScope } from '#lib/swap/dish-sum';
import { replyText } from '#lib/swap/reply-words';
import { localDate } from '#lib/units/local-date';
import { fold, singular } from '#lib/units/plain-words';

/** What the numbers of an answer are taken from. */
export type AnswerFrom = Pick<NumbersToPublish, 'file' | 'figures' | 'numbers' | 'lockedAt'>;

/** The viewer's number, as it was read or put right. */
export type TheirNumber = Pick<CommentNumber, 'nutrient' | 'amount' | 'decimals' | 'about'>;

/** What the person put right of the reading; null is left to the reading. */
export interface AnswerChoice {
  readonly number: TheirNumber | null;
  readonly segmentId: string | null;
  readonly scope: SumScope | null;
  /** Code of the slip that the reply tells; the nearest where null. */
  readonly slip: string | null;
}

/** Why a dish was taken for the one that a comment is about. */
export type DishReason = 'chosen' | 'named' | 'ourNumber' | 'onlyOne' | 'explains' | 'first';

export interface ViewerAnswer {
  readonly read: readonly CommentNumber[];
  /** Null where the comment has none and nobody said one. */
  readonly number: TheirNumber | null;
  readonly dish: Dish | null;
  readonly why: DishReason;
  readonly found: AnotherNumber | null;
  /** The breakdown's own number as it goes out. */
  readonly ours: PublishedNumber | null;
  /** Slip that the reply tells; null where none does. */
  readonly slip: string | null;
  readonly draft: string;
}

/**
 * What a comment says, which single difference gives its number, and a friendly reply. What cannot be read is asked for, and
 * where none gives the number, the reply asks instead of guessing.
 * @param options other readings of labels, by food
 */
export function answerTo(
  from: AnswerFrom,
  comment: string,
  choice: AnswerChoice,
  options: ExplainOptions = {},
): ViewerAnswer {
  const { file } = from;
  const dishes = dishesOf(file.episode.segments);
  const read = readComment(
    comment,
    dishes.map(({ title }) => title),
  );
  const explain = (dish: Dish, number: TheirNumber): Explanation => {
    const scope = choice.scope ?? scopeOf(dish, read, number);
    const ours = publishedOf(from, dish, scope, number);
    const published = plainNumber(ours);
    const wish = { ...number, segmentId: dish.id, scope };
    return { ours, found: explainNumber(file, wish, { ...options, published }) };
  };
  const { dish, why, number } = chosen(from, { dishes, read, comment, choice, explain });
  if (!dish || !number) return { read, number, dish, why, ...NOTHING };
  const { ours, found } = explain(dish, number);
  const told =
    found &&
    (found.explained.find(({ slip }) => slip.code === choice.slip) ?? found.explained[0] ?? null);
  const on = localDate(new Date(from.lockedAt ?? file.savedAt), file.kitchen.zone);
  const others = found?.explained.filter((each) => each !== told) ?? [];
  // What the person chose to tell is told, however slight.
  const isChosen = told !== null && told.slip.code === choice.slip;
  const as = found && {
    ...found,
    explained: told ? [isChosen ? { ...told, slight: false } : told, ...others] : [],
  };
  const known = plainNumber(ours) !== null;
  const published = ours && { number: known ? ours.number : null, why: known ? '' : ours.range };
  return {
    ...{ read, number, dish, why, found, ours },
    slip: told?.slip.code ?? null,
    draft: as ? replyText(file, as, on, published ?? undefined) : '',
  };
}

const NOTHING = { found: null, ours: null, slip: null, draft: '' } as const;

interface Explanation {
  readonly ours: PublishedNumber | null;
  readonly found: AnotherNumber | null;
}

interface Choosing {
  readonly dishes: readonly Dish[];
  readonly read: readonly CommentNumber[];
  readonly comment: string;
  readonly choice: AnswerChoice;
  readonly explain: (dish: Dish, number: TheirNumber) => Explanation;
}

type Chosen = Pick<ViewerAnswer, 'dish' | 'why' | 'number'>;

function chosen(from: AnswerFrom, choosing: Choosing): Chosen {
  const { dishes, read, choice, explain } = choosing;
  const { dish, why } = dishOf(from, choosing);
  const theirs = (of: Dish): TheirNumber | null =>
    choice.number ?? read.find((each) => !isOurs(from, of, each)) ?? read[0] ?? null;
  if (dish) return { dish, why, number: theirs(dish) };
  const explained = dishes.flatMap((each) => {
    const number = theirs(each);
    const nearest = number && explain(each, number).found?.explained[0];
    return number && nearest
      ? [{ dish: each, number, by: nearest, off: Math.abs(nearest.value - number.amount) }]
      : [];
  });
  explained.sort((a, b) => byChance(a.by) - byChance(b.by) || a.off - b.off);
  const [best] = explained;
  if (best) return { dish: best.dish, number: best.number, why: 'explains' };
  const first = dishes[0] ?? null;
  return { dish: first, why: 'first', number: first && theirs(first) };
}

/** How easily a way gives a number by chance: of any dish there are a dozen numbers of portions. */
const byChance = ({ slip, slight }: Explained): number =>
  slight ? 2 : slip.kind === 'otherPortions' ? 1 : 0;

function dishOf(
  from: AnswerFrom,
  { dishes, read, comment, choice }: Choosing,
): Pick<ViewerAnswer, 'dish' | 'why'> {
  const byId = dishes.find(({ id }) => id === choice.segmentId);
  if (byId) return { dish: byId, why: 'chosen' };
  const title = read.find(({ dish }) => dish !== null)?.dish;
  const named = dishes.find((each) => each.title === title) ?? namedIn(comment, dishes);
  if (named) return { dish: named, why: 'named' };
  const ours = dishes.filter((dish) => read.some((each) => isOurs(from, dish, each)));
  if (ours.length === 1 && ours[0]) return { dish: ours[0], why: 'ourNumber' };
  const [only, ...others] = dishes;
  if (only && others.length === 0) return { dish: only, why: 'onlyOne' };
  return { dish: null, why: 'first' };
}

/** Letters that a word of a title has at least to name its dish. */
const NAMING = 4;

/** The one dish of whose title most words stand in a comment; null where none or several do. */
function namedIn(comment: string, dishes: readonly Dish[]): Dish | null {
  const words = (text: string) => (fold(text).match(/\p{L}+/gu) ?? []).map(singular);
  const said = new Set(words(comment));
  const ranked = dishes
    .map((dish) => ({
      dish,
      named: new Set(words(dish.title).filter((word) => word.length >= NAMING && said.has(word)))
        .size,
    }))
    .sort((a, b) => b.named - a.named);
  const [first, second] = ranked;
  return first && first.named > 0 && first.named > (second?.named ?? 0) ? first.dish : null;
}

/** Whether a number of a comment is one that was published, so that the viewer quotes it. */
function isOurs(from: AnswerFrom, dish: Dish, each: CommentNumber): boolean {
  const scopes: SumScope[] = [
    { kind: 'whole' },
    ...dish.recipe.portions.map(({ id }) => ({ kind: 'portion' as const, portionId: id })),
  ];
  return scopes.some((scope) => plainNumber(publishedOf(from, dish, scope, each)) === each.amount);
}

/** Of what the number is: as the comment says of it, else of the first equal portion, else of all. */
function scopeOf(dish: Dish, read: readonly CommentNumber[], number: TheirNumber): SumScope {
  const said = read.find(
    ({ amount, nutrient }) => amount === number.amount && nutrient === number.nutrient,
  )?.of;
  const portion = dish.recipe.portions.find(({ kind }) => kind === 'count');
  if (said === 'whole' || said === 'day') return { kind: said };
  return portion ? { kind: 'portion', portionId: portion.id } : { kind: 'whole' };
}

function publishedOf(
  { numbers, figures }: AnswerFrom,
  dish: Dish,
  scope: SumScope,
  { nutrient }: Pick<TheirNumber, 'nutrient'>,
): PublishedNumber | null {
  if (!figures.nutrients.includes(nutrient)) return null;
  return numbers(nutrient, scope.kind === 'whole' ? { ...scope, segmentId: dish.id } : scope);
}

/** The number alone; null where it is open or only 'at least' or 'at most'. */
const plainNumber = (printed: PublishedNumber | null): number | null =>
  printed?.status === 'known' && printed.number !== null ? Number(printed.number) : null;
