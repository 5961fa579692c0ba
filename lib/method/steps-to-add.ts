import type { Step, StepLink } from '#lib/episode/step-schema';
import type { Proposal, ProposedStep } from '#lib/method/proposal';
import type { Rule, RuleName, RuleStep } from '#lib/method/rules';
import type { StepTime } from '#lib/method/usual-minutes';

/** What the person made of a step of a proposal. */
export interface ChosenStep extends StepTime {
  readonly key: string;
  /** Thousandths of a degree Celsius, for a step in the oven. */
  readonly ovenMilliC: number | null;
  /** Whether what its hands were read to touch is kept. */
  readonly keepsContact: boolean;
}

/** What the person made of a proposal: the ticked steps, and the rules left on with their minutes. */
export interface Chosen {
  readonly steps: readonly ChosenStep[];
  readonly rules: ReadonlyMap<RuleName, number>;
}

/** A step that is added, with a key that its ties name. */
export interface AddedStep extends Pick<
  Step,
  | 'title'
  | 'role'
  | 'lowS'
  | 'usualS'
  | 'highS'
  | 'hands'
  | 'burners'
  | 'racks'
  | 'coreMilliC'
  | 'contact'
  | 'note'
> {
  readonly key: string;
  readonly ovenMilliC: number | null;
}

/** A tie between two of them by their keys; `LAST` is the step that the dish had last. */
export type AddedTie = Omit<StepLink, 'id' | 'fromStepId' | 'toStepId'> & {
  readonly from: string;
  readonly to: string;
};
export const LAST = 'last';

export interface StepsToAdd {
  readonly steps: readonly AddedStep[];
  readonly ties: readonly AddedTie[];
  /** Washing up that the dish gets, in seconds; null where it keeps its own. */
  readonly washUpS: number | null;
}

/** A look or a turn falls between these parts of the step it belongs to. */
const HALFWAY = { from: 0.4, to: 0.6 } as const;
/** In whole minutes there is no time halfway through less than this. */
const LEAST_HALVED_S = 300;

/**
 * The steps and ties that a choice comes to, in the order of the text: each step after the end of the one before it,
 * what is done meanwhile from that one's start, a turn or a look within its own step. What a rule adds to a step that
 * was left out is left out too.
 * @param hasLast whether the dish has steps already, which the first new one then follows
 */
export function stepsToAdd(proposal: Proposal, chosen: Chosen, hasLast: boolean): StepsToAdd {
  const steps: AddedStep[] = [];
  const ties: AddedTie[] = [];
  let before = hasLast ? [LAST] : [];
  const follow = (key: string): void => {
    for (const from of before) ties.push(tie(from, 'end', key, 0, null, 'as written'));
    before = [key];
  };
  for (const step of proposal.steps) {
    const own = chosen.steps.find(({ key }) => key === step.key);
    if (!own) continue;
    const rules = ofStep(proposal.rules, chosen, step.key);
    for (const { rule, of, usualS } of rules) {
      if (of.when !== 'before') continue;
      const key = `${rule.name}-${own.key}`;
      steps.push(byRule(key, rule, of, usualS));
      follow(key);
    }
    const last = steps.length > 0 ? before.at(-1) : undefined;
    steps.push(added(step, own));
    if (step.meanwhile && last !== undefined) {
      ties.push(tie(last, 'start', own.key, 0, null, 'meanwhile'));
      before = [...before, own.key];
    } else follow(own.key);
    for (const { rule, of, usualS } of rules) {
      if (of.when === 'before') continue;
      const key = `${rule.name}-${own.key}`;
      if (of.when === 'halfway' && own.usualS < Math.max(LEAST_HALVED_S, 2 * usualS)) continue;
      steps.push(byRule(key, rule, of, usualS));
      if (of.when === 'after') follow(key);
      else {
        const [from, to] = [HALFWAY.from * own.usualS, HALFWAY.to * own.usualS];
        ties.push(tie(own.key, 'start', key, Math.floor(from), Math.ceil(to), 'halfway'));
      }
    }
  }
  return { steps, ties, washUpS: chosen.rules.get('washUp') ?? null };
}

function ofStep(
  rules: readonly Rule[],
  chosen: Chosen,
  key: string,
): { rule: Rule; of: RuleStep; usualS: number }[] {
  return rules.flatMap((rule) => {
    const usualS = chosen.rules.get(rule.name);
    const of = rule.steps.find((step) => step.of === key);
    return usualS === undefined || !of ? [] : [{ rule, of, usualS }];
  });
}

function tie(
  from: string,
  fromAnchor: StepLink['fromAnchor'],
  to: string,
  minLagS: number,
  maxLagS: number | null,
  reason: string,
): AddedTie {
  return { from, fromAnchor, to, toAnchor: 'start', minLagS, maxLagS, reason };
}

function added(
  step: ProposedStep,
  { key, lowS, usualS, highS, ovenMilliC, keepsContact }: ChosenStep,
): AddedStep {
  const { title, role, hands, burners, racks, coreMilliC, note } = step;
  return {
    key,
    title,
    role,
    lowS,
    usualS,
    highS,
    hands,
    burners,
    racks,
    coreMilliC,
    contact: keepsContact ? (step.contact?.contact ?? null) : null,
    note,
    ovenMilliC,
  };
}

/** A rule's step may take half its minutes, or twice: common practice, no source. */
function byRule(key: string, { basis }: Rule, step: RuleStep, usualS: number): AddedStep {
  const { title, role, hands, contact } = step;
  return {
    key,
    title: title.slice(0, 200),
    role,
    lowS: Math.floor(usualS / 2),
    usualS,
    highS: usualS * 2,
    hands,
    burners: 0,
    racks: 0,
    coreMilliC: null,
    contact,
    note: basis,
    ovenMilliC: null,
  };
}
