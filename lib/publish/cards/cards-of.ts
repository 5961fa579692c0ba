import { amountContext, dishesOf, recipeTitles, type Dish } from '#lib/episode/context';
import { isEatenSaid } from '#lib/episode/eaten-said';
import type { Portion } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { LockStanding } from '#lib/lock/lock-standing';
import type { Card } from '#lib/publish/cards/card';
import {
  cardNumber,
  meaningsOf,
  numbersInLine,
  scopeNumbers,
  type NumbersOfCards,
} from '#lib/publish/cards/card-number';
import { ingredientRows } from '#lib/publish/cards/ingredient-rows';
import { readable, type CardWords } from '#lib/publish/cards/readable';
import { dayTitle } from '#lib/publish/description/numbers-line';
import { portionTitle } from '#lib/publish/portion-title';
import { followedSteps, stepFacts } from '#lib/publish/cards/step-facts';

/** What cards are made of; see `numbersToPublish`. */
export interface CardSource extends NumbersOfCards {
  readonly file: EpisodeFile;
  readonly standing: LockStanding;
}

/**
 * The cards of an episode in running order: each dish with its numbers, ingredients, steps and its numbers for the
 * picture that stands for the video, a portion's before that of all of it, and after the dishes the day. Only published numbers are on them; a dish whose
 * numbers are open has its cards, and they say so.
 */
export function cardsOf(source: CardSource): readonly Card[] {
  const dishes = dishesOf(source.file.episode.segments).filter(({ id }) =>
    source.figures.dishes.some(({ segmentId }) => segmentId === id),
  );
  return [
    ...dishes.flatMap((dish, index) => dishCards(dish, `dish ${index + 1}`, source)),
    ...(dishes.length > 1 || (dishes.length === 1 && source.figures.dayIsWhole)
      ? dayCards(source)
      : []),
  ];
}

interface Making {
  readonly kind: Card['kind'];
  readonly segmentId: string | null;
  readonly name: string;
  /** What stands for a title without a letter that can be drawn. */
  readonly called: string;
  readonly words: Partial<CardWords>;
  readonly numbers?: Partial<Pick<Card, 'lead' | 'others'>>;
}

function made({ standing }: CardSource, making: Making): Card {
  const { kind, segmentId, name, called, words, numbers } = making;
  const all: CardWords = {
    ...{ kicker: '', title: '', say: '', change: null, rows: [], notes: [] },
    ...words,
  };
  return {
    ...{ kind, segmentId, atFrame: null, name, standing, lead: null, others: [] },
    ...numbers,
    ...readable(all, called),
  };
}

function dishCards(dish: Dish, called: string, source: CardSource): Card[] {
  const { id: segmentId, title, recipe } = dish;
  const whole = { kind: 'whole', segmentId } as const;
  const { lead, others, notes, open } = scopeNumbers(source, whole);
  const context = amountContext(source.file);
  const of = { segmentId, called };
  const name = (what: string) => `${title} ${what}`;
  const portions = recipe.portions.map((portion) => {
    const of = scopeNumbers(source, { kind: 'portion', portionId: portion.id });
    const words = portion.kind === 'byEye' ? `${portion.name} (by eye)` : portion.name;
    return { row: { words, amount: numbersInLine(of) }, meanings: of.meanings };
  });
  const shown = open ? [] : portions;
  const meanings = shown.flatMap((each) => each.meanings);
  const steps = followedSteps(dish).map((step) =>
    made(source, {
      ...of,
      ...{ kind: 'step', name: name(step.title) },
      words: { kicker: title, title: step.title, say: stepFacts(step).join(' · ') },
    }),
  );
  return [
    made(source, {
      ...of,
      ...{ kind: 'dish', name: name('macros'), numbers: { lead, others } },
      words: {
        ...{ kicker: 'the whole dish', title },
        rows: shown.map(({ row }) => row),
        notes: [...new Set([...notes, ...meanings])],
      },
    }),
    ...(recipe.lines.length === 0
      ? []
      : [
          made(source, {
            ...of,
            ...{ kind: 'ingredients', name: name('ingredients') },
            words: {
              ...{ kicker: 'ingredients', title },
              rows: ingredientRows(recipe, context, recipeTitles(source.file)),
            },
          }),
        ]),
    ...steps,
    ...recipe.portions.filter(isPart).map((portion) => {
      const words = portionTitle(portion);
      const kicker = portion.kind === 'byEye' ? `${words} (by eye)` : words;
      const making = { ...of, name: name(`number ${words}`), kicker };
      return thumbnail(source, making, { kind: 'portion', portionId: portion.id });
    }),
    thumbnail(source, { ...of, name: name('number'), kicker: 'the whole dish' }, whole),
  ];
}

/** A portion that is less than the dish, so that its number is another one. */
const isPart = (portion: Portion) => portion.kind !== 'count' || portion.of > 1;

function dayCards(source: CardSource): Card[] {
  const { file, figures, numbers } = source;
  const day = { kind: 'day' } as const;
  const total = scopeNumbers(source, day);
  const said = isEatenSaid(file);
  const other = file.episode.anythingElse;
  const title = dayTitle(figures);
  const rows = figures.dishes.map(({ segmentId, title: words }) => {
    const { hedge, number, unit } = cardNumber(source, 'energyKcal', { kind: 'eaten', segmentId });
    const amount = number === null ? 'open' : `${hedge} ${number} ${unit}`.trim();
    return { words, amount };
  });
  const meanings = meaningsOf(
    figures.dishes.map(({ segmentId }) => numbers('energyKcal', { kind: 'eaten', segmentId })),
  );
  const left = other?.kind === 'notCounted' ? [`not counted: ${other.what}`] : [];
  const of = { segmentId: null, called: title };
  return [
    made(source, {
      ...of,
      ...{ kind: 'day', name: 'day total', numbers: { lead: total.lead, others: total.others } },
      words: {
        ...{ kicker: said ? 'what was eaten' : ALL_MADE, title, rows },
        notes: [...new Set([...left, ...total.notes, ...meanings])],
      },
    }),
    thumbnail(
      source,
      {
        ...{ ...of, name: 'day number' },
        kicker: said ? title.toLowerCase() : `${title.toLowerCase()}, ${ALL_MADE}`,
      },
      day,
    ),
  ];
}

/** What a sum is of that nobody has said what was eaten of. */
const ALL_MADE = 'all that was made';

/** Energy and protein, as large as they go, with what their marks mean. */
function thumbnail(
  source: CardSource,
  { kicker, ...of }: Pick<Making, 'segmentId' | 'called' | 'name'> & { readonly kicker: string },
  scope: NumberScope,
): Card {
  const { lead } = scopeNumbers(source, scope);
  return made(source, {
    ...of,
    kind: 'thumbnail',
    numbers: {
      lead: { ...lead, label: '', range: '' },
      others: [{ ...cardNumber(source, 'protein', scope), range: '' }],
    },
    words: {
      kicker,
      notes: meaningsOf([source.numbers('energyKcal', scope), source.numbers('protein', scope)]),
    },
  });
}
