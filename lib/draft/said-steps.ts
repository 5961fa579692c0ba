import type { DraftSegment, From, Said } from './draft';
import { propose } from '#lib/method/proposal';
import { readMethod } from '#lib/method/read-method';
import { stepsToAdd, type AddedStep } from '#lib/method/steps-to-add';
import { LONGEST_METHOD } from '#lib/method/text';

/** A step whose minutes the method says, with the line that it was read from. */
export interface SaidStep {
  readonly step: AddedStep;
  readonly from: From;
}

/** What is known of the dish beside its method. */
const FOR_DISH = { ovens: [], segment: { washUpS: 0 } } as const;

/**
 * The steps of a method as far as it says how long they take, and at how many degrees where they are in an oven; a step
 * whose time would be a guess is none. They follow one another as written.
 */
export function saidSteps(
  { method }: Pick<DraftSegment, 'method'>,
  region: 'US' | 'EU',
): SaidStep[] {
  const text = methodText(method);
  if (text === '' || text.length > LONGEST_METHOD) return [];
  const read = readMethod(text, region);
  if (!read.ok) return [];
  const proposal = propose(read.value, { ...FOR_DISH, region });
  const said = proposal.steps.filter(({ racks, oven, ticked }, index) => {
    const minutes = read.value.steps[index]?.read.minutes ?? null;
    return ticked && minutes !== null && (racks === 0 || oven !== null);
  });
  const steps = said.map(({ key, lowS, usualS, highS, oven }) => ({
    key,
    lowS,
    usualS,
    highS,
    ovenMilliC: oven?.milliC ?? null,
    keepsContact: true,
  }));
  const add = stepsToAdd(proposal, { steps, rules: new Map() }, false);
  return add.steps.map((step) => {
    const sentence = said.find(({ key }) => key === step.key)?.sentence ?? '';
    const line = method.find((each) => each.text.includes(sentence.slice(0, 40))) ?? method[0];
    return { step, from: { ...(line?.from ?? NOWHERE), words: sentence } };
  });
}

const NOWHERE: From = { text: 'description', line: 1, startMs: null, words: '' };

/** A method as the dish keeps it, a line each. */
export function methodText(method: readonly Said[]): string {
  return method.map(({ text }) => text).join('\n');
}
