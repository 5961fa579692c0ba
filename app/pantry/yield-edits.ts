import { v7 as uuid } from 'uuid';
import type { Food } from '#lib/foods/food';
import { yieldQuestion } from '#lib/foods/yield-question';
import { failed, ok, type Result } from '#lib/result';
import type { Edit } from '#lib/store/command';

/** What the source of a person's own two weights is called. */
const OWN_SOURCE = 'my own weights';

interface OwnWeights {
  readonly method: string;
  readonly rawMg: number;
  readonly cookedMg: number;
  /** Half-width of either reading. */
  readonly halfMg: number;
  /** The ingredient whose cooking it was; null for one that is typed in the pantry. */
  readonly lineId: string | null;
  readonly at: Date;
}

/**
 * Keeps a person's own raw and cooked weight as a food's history. Weights that are odd for the food are asked
 * about, at the field `sure`, until the person says that they are right.
 * @param position where it stands after the food's others
 */
export function ownYieldEdits(
  food: Pick<Food, 'id' | 'section' | 'version'>,
  { halfMg, ...weights }: OwnWeights,
  position: number,
  sure: boolean,
): Result<readonly Edit[]> {
  const question = sure ? null : yieldQuestion(food, weights.rawMg, weights.cookedMg);
  if (question) return failed({ path: 'sure', code: 'odd-yield', message: question });
  const own = { source: OWN_SOURCE, ownHalfMg: halfMg };
  const row = { id: uuid(), foodId: food.id, position, ...weights, ...own };
  return ok([{ op: 'create', entity: 'YieldObservation', row }]);
}
