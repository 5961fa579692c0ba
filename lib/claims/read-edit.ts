import { claimFacts, type ClaimFacts } from '#lib/claims/claim-words/claim-facts';
import { claimWorking } from '#lib/claims/claim-words/claim-judged';
import { judgeClaimWord } from '#lib/claims/claim-words/judge-claim-word';
import type { Contradiction } from '#lib/claims/contradict/contradiction';
import { contradictions } from '#lib/claims/contradictions';
import type { EditFacts } from '#lib/claims/edit-facts';
import type { Judged, StatementPlace } from '#lib/claims/judged';
import { ENGLISH } from '#lib/claims/english/english';
import { judgeFreeFrom } from '#lib/claims/free-from/judge-free-from';
import { agreesBeyond, judgeBeyond, mayAgreeBeyond } from '#lib/claims/judge-beyond/judge-beyond';
import type { BeyondPlace } from '#lib/claims/judge-beyond/beyond-context';
import { mendsByWords } from '#lib/claims/mend-readings';
import { misheardOf } from '#lib/claims/misheard';
import { namedNotCounted, type NotCounted } from '#lib/claims/named-not-counted';
import type { Statement } from '#lib/claims/statement';
import { amountContext } from '#lib/episode/context';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Nutrient } from '#lib/foods/nutrients';
import {
  judgeContext,
  type JudgeContext,
  type JudgedDish,
  type NumbersFor,
} from './judge/judge-context';
import { judgeNutrient, nutrientTrial } from './judge/judge-nutrient';
import { isSpoken } from './judge/spoken';
import type { About } from './judge/meaning';
import { severalTogether } from './judge/several-together';
import { cannotSay, type Verdicted } from './judge/verdicted';
import { portionNamed } from './judge/portion-named';
import { dishesNamed, dishNames } from './places/dish-names';
import type { PlacedText, Topic } from './places/placed-text';
import { readRows, type ContextOf, type ReadRow } from './read-rows';
import { saidPlaces } from './said-places';

/** Words that the person said are no statement. */
export interface PutAside {
  readonly id: string;
  readonly place: StatementPlace;
  readonly statement: Statement;
  readonly mendId: string;
}

/** A food that is named and is in no ingredient, at its first mention. */
export interface FoodMention {
  readonly id: string;
  readonly place: StatementPlace;
  readonly statement: Extract<Statement, { readonly kind: 'foodNamed' }>;
}

/** All that the texts of an episode say, and what the working says of it. */
export interface EditReading {
  readonly texts: readonly PlacedText[];
  /** Text by text, what is said in the order of its time. */
  readonly judged: readonly Judged[];
  readonly putAside: readonly PutAside[];
  readonly foods: readonly FoodMention[];
  /** Foods that are named or used and are in no ingredient, each once. */
  readonly named: readonly NotCounted[];
  /** Statements that cannot all hold, whatever the ingredients say. */
  readonly contradictions: readonly Contradiction[];
}

/**
 * Reads every text of an episode’s edit and holds each statement against the breakdown, the steps, the log and the
 * prices.
 * @param facts what the day’s log and the shops say
 * @param numbersFor whose numbers are held against, as those of a lock; the file's own if left out
 * @example readEdit(file, NO_FACTS).judged.filter(({ verdict }) => verdict === 'off')
 */
export function readEdit(
  file: EpisodeFile,
  facts: EditFacts,
  numbersFor?: NumbersFor,
): EditReading {
  const texts = saidPlaces(file);
  const contextOf = contextsOf(file);
  const mends = mendsByWords(file.edit?.mends ?? []);
  const rows = texts.map((text) => ({ text, rows: inTime(readRows(text, contextOf, mends)) }));
  const nutrients = rows.flatMap((each) =>
    each.rows.flatMap(({ statement }) => nutrientsIn(statement)),
  );
  const judge = judgeOf(judgeContext(file, facts, [...new Set(nutrients)], numbersFor));
  const all = rows.flatMap(({ text, rows: own }) => own.map((row) => ({ text, row })));
  const kept = all.filter(({ row }) => !isNothing(row));
  const judged = kept.flatMap(({ text, row }) =>
    row.statement.kind === 'foodNamed' ? [] : [judge(row, row.statement, text)],
  );
  const foods = kept.flatMap(({ row: { id, place, statement } }) =>
    statement.kind === 'foodNamed' ? [{ id, place, statement }] : [],
  );
  const textOf = new Map(texts.map(({ said, text }) => [said.id, text]));
  return {
    texts,
    judged,
    putAside: all.flatMap(({ row }) => {
      const { id, place, statement, mend } = row;
      return mend && isNothing(row) ? [{ id, place, statement, mendId: mend.id }] : [];
    }),
    foods,
    named: namedNotCounted({ texts, foods, judged }, file),
    contradictions: contradictions(judged, file.episode, (id) => textOf.get(id) ?? ''),
  };
}

const isNothing = ({ mend }: ReadRow) => mend?.mend.kind === 'nothing';

/** Nutrients whose figures a statement may be held against; a mishearing may be of the other energy. */
function nutrientsIn(statement: Statement): Nutrient[] {
  if (statement.kind !== 'nutrient') return [];
  const energy = statement.nutrient === 'energyKcal' || statement.nutrient === 'energyKj';
  return energy || statement.unit === '%'
    ? [statement.nutrient, 'energyKcal', 'energyKj']
    : [statement.nutrient];
}

/** What is said in the order of its time; the rest in the order of the text. */
function inTime(rows: ReadRow[]): ReadRow[] {
  if (rows.every(({ place }) => place.startMs === null)) return rows;
  return rows
    .map((row, index) => ({ row, index, at: row.place.startMs ?? -1 }))
    .sort((a, b) => a.at - b.at || a.index - b.index)
    .map(({ row }) => row);
}

/** What the grammar is told of each topic, gathered once. */
function contextsOf(file: EpisodeFile): ContextOf {
  const segments = file.episode.segments.flatMap(({ id, title, recipe }) =>
    recipe ? [{ id, title, recipe }] : [],
  );
  const foods = new Map(file.foods.map(({ id, name }) => [id, name]));
  const recipes = new Map(file.recipes.map((recipe) => [recipe.id, recipe]));
  const titles = segments.map(({ title }) => title);
  const namesOf = (lines: (typeof segments)[number]['recipe']['lines'], depth = 0): string[] =>
    lines.flatMap(({ text, foodId, orFoodId, madeFrom }) => {
      const nested = madeFrom && depth < 4 ? recipes.get(madeFrom.recipeId) : undefined;
      return [
        ...readIngredient(text).map(({ food }) => food),
        ...[foodId, orFoodId].flatMap((id) => foods.get(id ?? '') ?? []),
        ...(nested ? [nested.title, ...namesOf(nested.lines, depth + 1)] : []),
      ];
    });
  const own = new Map(segments.map(({ id, recipe }) => [id, namesOf(recipe.lines)]));
  const titleOf = new Map(segments.map(({ id, title }) => [id, title]));
  const all = [...own.values()].flat();
  const known = (names: readonly string[]) => [...new Set(names.filter((name) => name !== ''))];
  const kept = new Map<string, ReturnType<ContextOf>>();
  const made = (id: string): ReturnType<ContextOf> => ({
    dishes: titles,
    dish: titleOf.get(id),
    // Where nobody knows which dish, what is in any of them is counted there.
    ingredients: known(own.get(id) ?? all),
  });
  return (topic) => {
    const id = topic.kind === 'dish' ? topic.segmentId : '';
    const before = kept.get(id) ?? (segments.length === 0 ? {} : made(id));
    kept.set(id, before);
    return before;
  };
}

type NumberedStatement = Exclude<Statement, { readonly kind: 'foodNamed' }>;
type Judge = (row: ReadRow, statement: NumberedStatement, text: PlacedText) => Judged;

function judgeOf(context: JudgeContext): Judge {
  const names = dishNames(context.dishes.map(({ dish }) => dish));
  const amounts = amountContext(context.file);
  const claims = new Map<string, ClaimFacts>();
  const claimsOf = ({ dish }: JudgedDish) => {
    const known = claims.get(dish.id) ?? claimFacts(context.file, dish);
    claims.set(dish.id, known);
    return known;
  };
  const byTitle = new Map<string, JudgedDish[]>();
  for (const each of context.dishes) {
    byTitle.set(each.dish.title, [...(byTitle.get(each.dish.title) ?? []), each]);
  }

  const kept = new Map<string, About>();
  const shared = (
    key: string,
    dishes: () => readonly JudgedDish[],
    more: Partial<Pick<About, 'day' | 'portionId' | 'together'>> = {},
  ): About => {
    const none = { day: false, portionId: null, settled: null };
    const known = kept.get(key) ?? { ...none, ...more, dishes: dishes() };
    kept.set(key, known);
    return known;
  };

  function aboutOf({ statement, topic, mend }: ReadRow, text: PlacedText): About {
    if (mend?.mend.kind === 'about') {
      const { segmentId, portionId, scope } = mend.mend;
      const dish = segmentId === null ? undefined : context.byId.get(segmentId);
      const dishes = dish ? [dish] : [];
      return { dishes, day: false, portionId: null, settled: { portionId, scope } };
    }
    const sum = severalTogether(text.text, statement, names);
    if (sum) {
      const { segmentIds, oneOfEach } = sum;
      const of = () => segmentIds.flatMap((id) => context.byId.get(id) ?? []);
      return shared(`sum ${segmentIds.join(' ')} ${oneOfEach}`, of, { together: { oneOfEach } });
    }
    const title = 'dish' in statement ? (statement.dish ?? '') : '';
    const titled = byTitle.get(title);
    const of = titled ?? (topic.kind === 'dish' ? dishesOf(topic) : null);
    if (of) {
      const [only, ...others] = of;
      const ids = of.map(({ dish }) => dish.id).join(' ');
      const portionId =
        only && others.length === 0
          ? portionNamed(text.text, statement, only.dish, isSpoken(text.said.kind))
          : null;
      return shared(`${ids}:${portionId ?? ''}`, () => of, { portionId });
    }
    if (topic.kind === 'unknown') return shared('unknown', () => context.dishes);
    const dishes = () => {
      const named = dishesNamed(text.text, names).map(({ segmentId }) => segmentId);
      // A title that names none may be of any of them; unless it, or the episode’s, says that it is of several.
      const title = `${context.file.episode.title} ${text.text}`;
      if (named.length === 0 && !ENGLISH.patterns.severalDishes.test(title)) return context.dishes;
      return named.flatMap((id) => context.byId.get(id) ?? []);
    };
    return shared(`text ${text.said.id}`, dishes, { day: true });
  }

  const dishesOf = ({ segmentId }: Extract<Topic, { readonly kind: 'dish' }>) => {
    const dish = context.byId.get(segmentId);
    return dish ? [dish] : context.dishes;
  };

  function verdictOf(
    row: ReadRow,
    statement: NumberedStatement,
    text: PlacedText,
    about: About,
  ): Verdicted & Pick<Judged, 'claim'> {
    const dish = dishAlone(about);
    if (statement.kind === 'nutrient') return judgeNutrient(statement, row.place, about, context);
    if (statement.kind === 'claimWord') {
      if (!dish) return cannotSay('which dish?');
      const before = text.text.slice(Math.max(0, statement.start - 12), statement.start);
      const told = judgeClaimWord(statement, claimsOf(dish), { before });
      const { verdict, why, difference, sayInstead, remark, against } = told;
      return { verdict, why, difference, sayInstead, remark, against, claim: claimWorking(told) };
    }
    if (statement.kind === 'freeFrom') {
      const dishes = about.dishes.map((each) => each.dish);
      return judgeFreeFrom(statement, dishes, amounts);
    }
    return judgeBeyond(statement, beyondPlace(row, text, about), context);
  }

  function dishAlone({ dishes, day }: About): JudgedDish | null {
    const [only, ...others] = dishes;
    return only && others.length === 0 && !day ? only : null;
  }

  function beyondPlace({ place, inAll }: ReadRow, { text }: PlacedText, about: About): BeyondPlace {
    const among = about.dishes.length > 0 ? { among: about.dishes } : {};
    return { dish: dishAlone(about), ...among, spoken: isSpoken(place.kind), text, inAll };
  }

  function misheard(
    row: ReadRow,
    statement: NumberedStatement,
    text: PlacedText,
    about: About,
  ): Judged['misheard'] {
    if (row.place.kind !== 'captions') return [];
    if (statement.kind === 'claimWord' || statement.kind === 'freeFrom') return [];
    const before = text.text.slice(Math.max(0, statement.start - 12), statement.start);
    if (statement.kind === 'nutrient') {
      const { near, agrees } = nutrientTrial(statement, row.place, about, context);
      const ofNutrient = (other: Statement) => other.kind === 'nutrient' && agrees(other);
      return misheardOf(statement, before, { near, agrees: ofNutrient });
    }
    const { low } = statement;
    const place = beyondPlace(row, text, about);
    if (!mayAgreeBeyond(statement, place, context)) return [];
    return misheardOf(statement, before, {
      // Beyond a nought more or less it is no mishearing of an oven, a time or an amount.
      near: (value) => value < low * 12 && value * 12 > low,
      agrees: (other) => other.kind !== 'nutrient' && agreesBeyond(other, place, context),
    });
  }

  return (row, statement, text) => {
    const about = aboutOf(row, text);
    const verdicted = verdictOf(row, statement, text, about);
    const segmentId = dishAlone(about)?.dish.id ?? null;
    return {
      id: row.id,
      place: { ...row.place, segmentId },
      statement,
      mendId: row.mend?.id ?? null,
      ...verdicted,
      misheard: verdicted.verdict === 'off' ? misheard(row, statement, text, about) : [],
    };
  };
}
