import type { Step } from '#lib/episode/step-schema';
import type { DayFold } from '#lib/shoot/fold-day';

/** Once these begin, the plate is never whole again. */
const ENDS_THE_PLATE: ReadonlySet<Step['role']> = new Set(['eat', 'taste']);

/** How a shot stands: takes so far, and whether one of them is good. */
export interface ShotState {
  readonly takes: number;
  readonly good: boolean;
}

/** How a shot stands: what was said of its last take counts. */
export function shotState({ takes }: Pick<DayFold, 'takes'>, shotId: string): ShotState {
  const own = takes.filter((take) => take.shotId === shotId);
  return { takes: own.length, good: own.at(-1)?.good === true };
}

/**
 * The shots of a dish that are still missing when a step that ends the plate is about to begin; those of that step
 * itself, which are got while it goes on, are not asked for, nor those that the day does without.
 *
 * @param shots the shots of the step's segment
 */
export function missingShots<S extends { readonly id: string; readonly stepId: string | null }>(
  step: { readonly id: string; readonly role: Step['role'] },
  shots: readonly S[],
  fold: Pick<DayFold, 'takes' | 'without'>,
): S[] {
  if (!ENDS_THE_PLATE.has(step.role)) return [];
  return shots.filter(
    ({ id, stepId }) => stepId !== step.id && !fold.without.has(id) && !shotState(fold, id).good,
  );
}
