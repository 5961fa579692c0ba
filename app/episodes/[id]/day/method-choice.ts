import { OVEN_MILLI_C } from '#lib/episode/step-limits';
import type { Proposal, ProposedStep } from '#lib/method/proposal';
import type { RuleName } from '#lib/method/rules';
import type { Chosen, ChosenStep } from '#lib/method/steps-to-add';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { checkDegrees } from '../../../_forms/degrees';
import { minutes } from '../../../_forms/number-fields';
import { ruleFields, stepFields } from './method-fields';
import { checkTimes } from './step-times';

type Texts = Readonly<Record<string, unknown>>;

/** What was ticked and typed of a proposal, or what to put right, each at its field. */
export function choiceOf(proposal: Proposal, sent: Texts, unit: 'C' | 'F'): Result<Chosen> {
  const problems: Problem[] = [];
  const fault = (path: string, message: string) => {
    problems.push({ path, code: 'custom', message });
    return 0;
  };
  const text = (name: string): string => {
    const value = sent[name];
    return typeof value === 'string' ? value.trim() : '';
  };
  const seconds = (name: string, what: string): number => {
    const read = minutes(what).safeParse(text(name));
    return read.success ? read.data : fault(name, read.error.issues[0]?.message ?? `Say ${what}.`);
  };
  const chosenStep = ({ key, racks }: ProposedStep): ChosenStep => {
    const field = stepFields(key);
    const usualS = seconds(field.usual, 'how long it usually takes');
    const lowS = text(field.low) === '' ? usualS : seconds(field.low, 'the shortest time');
    const highS = text(field.high) === '' ? usualS : seconds(field.high, 'the longest time');
    const isRight = (name: string) => problems.every(({ path }) => path !== name);
    if (isRight(field.usual)) {
      const { low, high } = checkTimes(lowS, usualS, highS);
      if (low !== null) fault(field.low, low);
      if (high !== null && isRight(field.high)) fault(field.high, high);
    }
    const ovenMilliC = racks > 0 ? degrees(field.oven) : null;
    const keepsContact = sent[field.contact] === 'on';
    return { key, lowS, usualS, highS, ovenMilliC, keepsContact };
  };
  const degrees = (name: string): number => {
    const typed = text(name);
    if (typed === '') return fault(name, 'Say its degrees, or take its tick away.');
    const own = /f$/i.test(typed) ? 'F' : /c$/i.test(typed) ? 'C' : unit;
    const { milliC, wrong } = checkDegrees(typed, own, OVEN_MILLI_C);
    return wrong === null ? (milliC ?? 0) : fault(name, wrong);
  };
  const steps = proposal.steps
    .filter(({ key }) => sent[stepFields(key).tick] === 'on')
    .map(chosenStep);
  const rules = new Map<RuleName, number>();
  for (const { name } of proposal.rules) {
    const field = ruleFields(name);
    if (sent[field.tick] === 'on') rules.set(name, seconds(field.minutes, 'how long it takes'));
  }
  if (steps.length === 0) fault('method', 'Nothing is ticked: tick the steps to add.');
  return problems.length > 0 ? failed(...problems) : ok({ steps, rules });
}
