import { filmedTogether } from '#lib/episode/also-filmed';
import { amountContext, type AmountContext } from '#lib/episode/context';
import { writtenAmount } from '#lib/episode/line-amount';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { Section } from '#lib/foods/food';
import type { Caution } from '#lib/safety/caution';
import { THAWING, TWO_HOURS } from '#lib/safety/general-cautions';
import { daysBefore, eveningSteps, type EveningStep } from '#lib/shoot/evening';
import { mayGoInRaw } from '#lib/shoot/may-go-in-raw';
import type { ShootPlan } from '#lib/shoot/plan';
import { shoppingList, type ShoppingItem } from '#lib/shopping/shopping-list';
import { isInStock } from '#lib/shopping/shopping-text';
import { isMassUnit } from '#lib/units/units';
import { evaluate } from '#lib/units/sum-of-products';

/** An ingredient to weigh out, for all batches of its dish. */
export interface WeighOut {
  readonly dish: string;
  readonly line: string;
  readonly massMg: number;
  /** Whether the ingredient as it is written says these grams already. */
  readonly saysSo: boolean;
}

/** Room on the cards that the day's steps on camera take, each filmed once from start to end. */
export interface CardSpace {
  readonly seconds: number;
  /** Null where nobody said what the camera writes. */
  readonly bytes: number | null;
}

/** An empty pan or bowl that was weighed. */
export interface TareWeight {
  readonly dish: string;
  readonly massMg: number;
}

/** All that is done the evening before a filming day. */
export interface EveningBefore {
  readonly date: string;
  readonly steps: readonly EveningStep[];
  readonly weighOut: readonly WeighOut[];
  /** Foods of the day's dishes of which there is too little, and ingredients without a food. */
  readonly short: {
    readonly items: readonly ShoppingItem[];
    readonly unmatched: readonly string[];
  };
  readonly cards: CardSpace;
  readonly outfit: string;
  readonly tares: readonly TareWeight[];
  readonly cautions: readonly Caution[];
}

/** What keeps until the next day once it is weighed out. */
const KEEPS: ReadonlySet<Section> = new Set(['dryGoods', 'spicesAndBaking', 'oilsAndSauces']);

/**
 * The evening before a filming day: its steps worked back from the plan, and what else is got ready. Null where the
 * file has no day.
 */
export function eveningBefore(file: EpisodeFile, plan: ShootPlan): EveningBefore | null {
  const { day } = file;
  if (day === null) return null;
  const together = wholeDay(file);
  const parts = new Map(day.segments.map(({ segmentId, part }) => [segmentId, part]));
  const segments = together.episode.segments.filter(({ id }) => parts.has(id));
  const cooked = segments.filter(({ id }) => parts.get(id) !== 'film');
  const context = amountContext(together);
  const steps = eveningSteps(file, plan);
  return {
    date: daysBefore(day.date, 1),
    steps,
    weighOut: cooked.flatMap((segment) => weighOutOf(segment, context)),
    short: shortOf(together, cooked),
    cards: cardSpace(file, segments),
    outfit: day.outfit,
    tares: cooked.flatMap(taresOf),
    cautions: cautionsOf(cooked, steps, together),
  };
}

/** The file with the dishes of all episodes of the day, which share hands, larder and cards. */
function wholeDay(file: EpisodeFile): EpisodeFile {
  const { episode, ...rest } = filmedTogether(file);
  return { ...file, ...rest, episode: { ...file.episode, segments: episode.segments } };
}

function weighOutOf(segment: Segment, context: AmountContext): WeighOut[] {
  const { num, den } = segment.batches;
  return (segment.recipe?.lines ?? []).flatMap((line) => {
    const food = context.foods.get(line.foodId ?? '');
    if (!food || !KEEPS.has(food.section) || line.state === 'cooked') return [];
    const once = plannedMg(line, context);
    if (once === null) return [];
    const saysSo = line.unit !== null && isMassUnit(line.unit) && num === den;
    return [{ dish: segment.title, line: line.text, massMg: (once * num) / den, saysSo }];
  });
}

/** Grams as planned, whatever was weighed since; null where nobody knows them. */
function plannedMg(line: RecipeLine, context: AmountContext): number | null {
  const amount = writtenAmount(line, context.foods.get(line.foodId ?? '') ?? null, context);
  if (!amount.massMg) return null;
  return evaluate(
    amount.massMg,
    new Map([...amount.sources].map(([id, { value }]) => [id, value])),
  );
}

function shortOf(file: EpisodeFile, cooked: readonly Segment[]): EveningBefore['short'] {
  const list = shoppingList(file);
  const ids = new Set(cooked.map(({ id }) => id));
  const titles = new Set(cooked.map(({ title }) => title));
  return {
    items: list.items.filter(
      (item) => !isInStock(item) && item.working.some(({ segmentId }) => ids.has(segmentId)),
    ),
    unmatched: list.unmatched
      .filter(({ segment }) => titles.has(segment))
      .map(({ line, segment }) => `${line} (${segment})`),
  };
}

/** Megabits a second over eight are megabytes a second; both are decimal (SI). */
function cardSpace(file: EpisodeFile, segments: readonly Segment[]): CardSpace {
  const seconds = segments
    .flatMap(({ steps }) => steps)
    .filter(({ onCamera }) => onCamera)
    .reduce((sum, { usualS }) => sum + usualS, 0);
  const { videoMbps } = file.kitchen;
  return { seconds, bytes: videoMbps === null ? null : (seconds * videoMbps * 1_000_000) / 8 };
}

function taresOf({ title, recipe }: Segment): TareWeight[] {
  return (recipe?.weighings ?? [])
    .filter(({ kind }) => kind === 'container')
    .map(({ grossMg, tareMg }) => ({ dish: title, massMg: grossMg - tareMg }));
}

const THAWS = /\b(thaw|defrost)/i;

/** Thawing where something may be frozen: it says so, or it is meat, poultry or fish that may be raw. */
function cautionsOf(
  cooked: readonly Segment[],
  steps: readonly EveningStep[],
  file: EpisodeFile,
): Caution[] {
  const frozenFoods = new Set(
    file.foods.filter(({ section }) => section === 'frozen').map(({ id }) => id),
  );
  const lines = cooked.flatMap(({ recipe }) => recipe?.lines ?? []);
  const frozen =
    lines.some(({ foodId, orFoodId }) =>
      [foodId, orFoodId].some((id) => frozenFoods.has(id ?? '')),
    ) ||
    cooked.some((segment) =>
      mayGoInRaw(file, segment).some(({ foodClass }) => foodClass !== 'eggDish'),
    );
  const thaws = steps.some(({ step }) => THAWS.test(`${step.title} ${step.note}`));
  return [...(frozen || thaws ? [THAWING] : []), ...(steps.length > 0 ? [TWO_HOURS] : [])];
}
