import { inGrains, type StepAfter } from '#lib/shoot/after-steps';
import { minutesSaid } from '#lib/units/read-typed';

/** What a step took, and by how much that is off the plan, each empty where it is not known. */
export function actualWords({ step, actual, redone }: StepAfter): {
  readonly took: string;
  readonly difference: string;
  readonly remark: string;
} {
  const again = redone === 0 ? '' : `made ${redone + 1} times: the last one counts`;
  switch (actual.kind) {
    case 'skipped':
      return { took: '', difference: '', remark: 'skipped' };
    case 'notDone':
      return { took: '', difference: '', remark: 'not done' };
    case 'noStart':
      return { took: '', difference: '', remark: 'its start was not entered' };
    case 'took':
    case 'asPlanned':
    case 'doubtful':
    case 'sinceDone': {
      const off = inGrains(actual.seconds) - step.usualS;
      const asked = questionOf(actual.kind, off);
      return {
        took: minutesSaid(inGrains(actual.seconds)),
        difference:
          off === 0 ? 'as planned' : `${minutesSaid(Math.abs(off))} ${off < 0 ? 'less' : 'more'}`,
        remark: [again, asked].filter(Boolean).join('; '),
      };
    }
  }
}

function questionOf(kind: StepAfter['actual']['kind'], off: number): string {
  if (kind === 'sinceDone') {
    return 'its start was not entered; so long after the Done before it: was it begun then?';
  }
  if (kind !== 'doubtful') return '';
  return off < 0
    ? 'far less than planned: was it done so soon, or was its start pressed late?'
    : 'far more than planned: did it take so long, or was its end pressed late?';
}

/** What the day comes to, in a sentence. */
export function daySummary(steps: readonly StepAfter[]): string {
  const timed = steps.flatMap(({ actual, step }) =>
    actual.kind === 'took' || actual.kind === 'asPlanned'
      ? [{ took: inGrains(actual.seconds), usual: step.usualS }]
      : [],
  );
  if (timed.length === 0) return 'No step has both its start and its end yet.';
  const off = timed.reduce((sum, { took, usual }) => sum + took - usual, 0);
  const by =
    off === 0
      ? 'what was planned'
      : `${minutesSaid(Math.abs(off))} ${off < 0 ? 'less' : 'more'} than planned`;
  if (timed.length === 1) return `One step has a start and an end: it took ${by}.`;
  return `${timed.length} of ${steps.length} steps have a start and an end: together they took ${by}.`;
}
