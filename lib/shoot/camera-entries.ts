import { cameraMoveMin, stepsWithSetUp } from '#lib/shoot/camera-rules';
import type { DayFacts } from '#lib/shoot/day-facts';
import { minutesText } from '#lib/shoot/day-words';
import { plainEntry } from '#lib/shoot/plain-entry';
import type { BrokenRule, PlanEntry } from '#lib/shoot/plan';

/** The moves of the camera that placed steps ask for, and those for which the hands have no time. */
export interface CameraMoves {
  readonly entries: readonly PlanEntry[];
  readonly broken: readonly BrokenRule[];
}

/**
 * One move before each step that is filmed from elsewhere than the one before it, as soon as the hands are free for
 * all of it.
 * @param placed everything of the day that may take the hands
 */
export function cameraMoves(facts: DayFacts, placed: readonly PlanEntry[]): CameraMoves {
  const minutes = cameraMoveMin(facts);
  const setUpOf = new Map(stepsWithSetUp(facts).map(({ step }) => [step.id, step.cameraSetUp]));
  const filmed = placed
    .filter(({ stepId }) => setUpOf.has(stepId ?? ''))
    .sort((a, b) => a.startMin - b.startMin || (a.id < b.id ? -1 : 1));
  const busy = placed.filter(({ hands, startMin, endMin }) => hands && endMin > startMin);
  const entries: PlanEntry[] = [];
  const broken: BrokenRule[] = [];
  filmed.forEach((next, index) => {
    const last = filmed[index - 1];
    const setUp = setUpOf.get(next.stepId ?? '') ?? '';
    if (minutes === 0 || last === undefined || setUpOf.get(last.stepId ?? '') === setUp) return;
    const start = firstFree(busy, last.endMin, next.startMin, minutes);
    if (start === null) {
      broken.push({
        rule: 'camera',
        message: `There is no time for the hands to move the camera (${minutesText(minutes)}) between ${last.title} and ${next.title}.`,
        stepIds: [last.stepId ?? '', next.stepId ?? ''],
      });
      return;
    }
    entries.push({
      ...plainEntry(`cameraMove:${next.stepId ?? ''}`, 'cameraMove', `Move the camera: ${setUp}`),
      segmentId: next.segmentId,
      startMin: start,
      endMin: start + minutes,
      hands: true,
      why: `for ${next.title}`,
    });
  });
  return { entries, broken };
}

/** The first minute from which nothing takes the hands for so long, within a stretch; null where there is none. */
function firstFree(
  busy: readonly PlanEntry[],
  from: number,
  until: number,
  minutes: number,
): number | null {
  const starts = [from, ...busy.map(({ endMin }) => endMin)].sort((a, b) => a - b);
  const free = (start: number): boolean =>
    start >= from &&
    start + minutes <= until &&
    busy.every(({ startMin, endMin }) => endMin <= start || startMin >= start + minutes);
  return starts.find(free) ?? null;
}
