import { cameraMoveMin, stepsWithSetUp } from '#lib/shoot/camera-rules';
import { stepTitle, type DayFacts } from '#lib/shoot/day-facts';
import { minutesText } from '#lib/shoot/day-words';
import { ceilMin } from '#lib/shoot/minutes';
import { FILMED_WORDS } from '#lib/shoot/step-words';

/** What a rule that steps and the kitchen bring along is about, what it asks, and which steps it concerns. */
export interface KeptRule {
  readonly rule: string;
  readonly words: string;
  readonly stepIds: readonly string[];
}

/**
 * A rule by its kind and its own id in the problem, in words that say what it asks; null for another kind.
 *
 * @example keptRule('rest', 'bake:taste', facts)?.words // 'Bake is followed by a rest of 10 min before Taste it.'
 */
export function keptRule(kind: string, own: string, facts: DayFacts): KeptRule | null {
  const [first = '', second = ''] = own.split(':');
  const title = (stepId: string): string => stepTitle(facts, stepId);
  const segment = facts.segments.find(({ id }) => id === first);
  switch (kind) {
    case 'rest': {
      const rest = minutesText(ceilMin(facts.stepById.get(first)?.step.restS ?? 0));
      const words = `${title(first)} is followed by a rest of ${rest} before ${title(second)}.`;
      return { rule: 'rest', words, stepIds: [first, second] };
    }
    case 'still': {
      const words = `${title(first)} is got before ${title(second)}: after the first bite it is too late.`;
      return { rule: 'shots', words, stepIds: [first, second] };
    }
    case 'story': {
      const when = segment?.filmedWhen ?? null;
      const words = `${segment?.title ?? first} is filmed ${when === null ? 'in its turn' : FILMED_WORDS[when]}.`;
      return { rule: 'story', words, stepIds: second === '' ? [] : [second] };
    }
    case 'start':
      return {
        rule: 'start',
        words: `${title(first)} begins not after its pin.`,
        stepIds: [first],
      };
    case 'clean':
    case 'touch':
    case 'contact': {
      const steps = facts.steps.filter(({ step }) => step.contact !== null);
      const words =
        'Between raw meat, poultry, fish or egg and food that is eaten as it is, hands, board and counter are cleaned.';
      return { rule: 'contact', words, stepIds: steps.map(({ step }) => step.id) };
    }
    case 'camera':
    case 'setUp': {
      // Without an id after the kind, 'camera' is the one camera.
      if (own === 'camera') return null;
      const minutes = minutesText(cameraMoveMin(facts));
      const steps = stepsWithSetUp(facts);
      const words = `Moving the camera takes ${minutes} and the hands.`;
      return { rule: 'camera', words, stepIds: steps.map(({ step }) => step.id) };
    }
    case 'counter': {
      const steps = facts.steps.filter(({ step }) => step.counter > 0);
      const words = `There are ${facts.counterPlaces ?? 0} places on the counter.`;
      return { rule: 'counter', words, stepIds: steps.map(({ step }) => step.id) };
    }
    case 'appliance': {
      const found = facts.appliances.find(({ id }) => id === first);
      const steps = facts.steps.filter(({ step }) => step.applianceId === first);
      const words = `${found?.name ?? 'An appliance'} takes ${found?.places ?? 1} at a time.`;
      return { rule: 'appliance', words, stepIds: steps.map(({ step }) => step.id) };
    }
    default:
      return null;
  }
}
