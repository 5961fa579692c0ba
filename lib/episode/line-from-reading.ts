import type { Food } from '#lib/foods/food';
import { pickMeasure, WHICH_ONE } from '#lib/episode/match-line';
import { withoutSign } from '#lib/episode/read-ingredient-seasonings';
import type { ReadIngredient } from '#lib/episode/read-ingredient-types';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { UNSAID_LINE } from '#lib/episode/unsaid';

export interface LineOptions {
  /** Whether the person has said that this is the food. */
  readonly match?: RecipeLine['match'];
}

/** Words that say that peel, shell or stones are in the amount. */
const AS_BOUGHT =
  /\b(?:as bought|with (?:the |its |their )?(?:peel|shells?|bones?|stones?|pits)|in (?:the |its |their )?shells?|bone-in)\b/i;
const LONGEST_NOTE = 200;

/**
 * An ingredient of a dish from its reading and the food it was matched with. Grams that the words state are
 * planned; where the food has several measures and the words choose none, the line names the measure as it was
 * said, which no measure of the food answers to: the amount is then open and never the first that comes.
 *
 * @returns the fields of the line but its id; it leaves nothing behind until the person says so
 */
export function lineFromReading(
  part: ReadIngredient,
  food: Food | null,
  options: LineOptions = {},
): Omit<RecipeLine, 'id'> {
  return {
    ...UNSAID_LINE,
    text: withoutSign(part.text),
    quantity: part.quantity,
    unit: part.unit,
    measureName: measureNameOf(part, food),
    foodId: food?.id ?? null,
    orFoodId: null,
    madeFrom: null,
    match: options.match ?? 'provisional',
    state: part.state ?? food?.version.state ?? 'asIs',
    asBought: AS_BOUGHT.test(part.text),
    planned: part.weight,
    leftBehind: { kind: 'none' },
    cookMethod: null,
    retention: null,
    bounded: [],
    spoiltByTake: false,
    note: shortened(part.note),
  };
}

const WITHOUT_MEASURE = new Set(['g', 'kg', 'oz', 'lb', 'serving', 'pack']);

function measureNameOf(part: ReadIngredient, food: Food | null): string | null {
  if (part.unit === null || WITHOUT_MEASURE.has(part.unit)) return null;
  if (food === null) return part.measure;
  const picked = pickMeasure(food, part);
  if (picked) return picked.name;
  if (food.measures.length === 0) return part.measure;
  const said = part.measure ?? part.unit;
  return food.measures.some(({ name }) => name === said) ? `${said}${WHICH_ONE}` : said;
}

/** A note as long as the file format holds, cut between words; the whole stays in the line's text. */
function shortened(note: string): string {
  if (note.length <= LONGEST_NOTE) return note;
  const cut = note.slice(0, LONGEST_NOTE - 1);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), LONGEST_NOTE / 2)).trimEnd()}…`;
}
