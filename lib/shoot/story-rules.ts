import type { Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import { soilingSteps, type DayFacts } from '#lib/shoot/day-facts';
import { ceilMin } from '#lib/shoot/minutes';
import { lag, mark, taskIdOf, type Draft } from '#lib/shoot/problem-parts';

const SAID: ReadonlySet<Step['role']> = new Set(['shoot', 'talk']);
const BITTEN: ReadonlySet<Step['role']> = new Set(['taste', 'eat']);

/** The other dishes of the day. */
function dishesBeside(segment: Segment, facts: DayFacts): readonly Segment[] {
  return facts.segments.filter(({ id, recipe }) => id !== segment.id && recipe !== null);
}

/**
 * What a segment's story asks: its shots before anything of a dish is dirty, or after every dish is ready. A mark
 * stands between the one and the other, so that there are as many rules as steps and not as pairs of them.
 */
export function addStory(facts: DayFacts, draft: Draft): void {
  for (const segment of facts.segments) {
    if (segment.filmedWhen === null) continue;
    const said = segment.steps.filter(({ role }) => SAID.has(role));
    const others = dishesBeside(segment, facts).flatMap((dish) =>
      soilingSteps(dish).filter(
        ({ role }) => segment.filmedWhen === 'beforeDirty' || !SAID.has(role),
      ),
    );
    if (said.length === 0 || others.length === 0) continue;
    const id = `story:${segment.id}`;
    const [first, then] = segment.filmedWhen === 'beforeDirty' ? [said, others] : [others, said];
    draft.tasks.push(mark(id));
    for (const step of first) {
      draft.lags.push(lag(`${id}:${step.id}`, taskIdOf(step.id), 'end', id, 0));
    }
    for (const step of then) {
      draft.lags.push(lag(`${id}:${step.id}`, id, 'end', taskIdOf(step.id), 0));
    }
  }
}

/**
 * Of a dish: what must rest after reaching its inside temperature does so before it is tasted or eaten, and its shots
 * that are written before the first bite are got before it.
 */
export function addBeforeBite(facts: DayFacts, draft: Draft): void {
  for (const { recipe, steps } of facts.segments) {
    if (recipe === null) continue;
    const bite = steps.findIndex(({ role }) => BITTEN.has(role));
    const bites = steps.filter(({ role }) => BITTEN.has(role));
    for (const step of steps.slice(0, Math.max(0, bite))) {
      const rest = ceilMin(step.restS);
      const shown = step.role === 'shoot';
      if (rest === 0 && !shown) continue;
      const kind = rest > 0 ? 'rest' : 'still';
      for (const { id } of bites) {
        const rule = `${kind}:${step.id}:${id}`;
        draft.lags.push(lag(rule, taskIdOf(step.id), 'end', taskIdOf(id), rest));
      }
    }
  }
}
