import type { EpisodeFile, Segment } from '#lib/episode/schema';
import { propose, type Proposal } from '#lib/method/proposal';
import { readMethod } from '#lib/method/read-method';
import type { Result } from '#lib/result';
import { animalFoods } from '#lib/shoot/may-go-in-raw';
import { CONTACT_WORDS } from '#lib/shoot/step-words';
import type { LoggedStep } from '#lib/shoot/after-logged';
import { degreesTyped, minutesTyped } from '#lib/units/read-typed';
import { ruleFields, stepFields, type MethodOffer } from './method-fields';

/** The unit in which the oven's degrees are typed. */
export const unitOf = (file: Pick<EpisodeFile, 'episode'>): 'C' | 'F' =>
  file.episode.region === 'US' ? 'F' : 'C';

/** A dish with what its steps may have taken on other days. */
export interface MethodDish {
  readonly file: EpisodeFile;
  readonly segment: Segment;
  readonly logged: readonly LoggedStep[];
}

/** The proposal for a dish from a text. */
export function proposalOf({ file, segment, logged }: MethodDish, text: string): Result<Proposal> {
  const { region } = file.episode;
  const method = readMethod(text, region);
  if (!method.ok) return method;
  const { ovens } = file.kitchen;
  const foods = animalFoods(file, segment.recipe);
  return { ok: true, value: propose(method.value, { ovens, segment, region, logged, foods }) };
}

/** What the form draws of a proposal. */
export function offerOf(proposal: Proposal, unit: 'C' | 'F'): MethodOffer {
  return {
    steps: proposal.steps.map(({ key, title, hands, racks, sentence, found, remark, contact }) => ({
      key,
      title,
      hands,
      inOven: racks > 0,
      sentence,
      found,
      remark,
      contact: contact && `Touches ${CONTACT_WORDS[contact.contact]} (“${contact.words}”)`,
    })),
    rules: proposal.rules.map(({ name, title, words, basis, steps }) => ({
      name,
      title,
      words,
      basis,
      adds: steps.map((step) => step.title),
    })),
    shown: proposal.shown,
    unit,
  };
}

/** The fields of a proposal as they stand at first. */
export function offeredTexts(proposal: Proposal, unit: 'C' | 'F'): Record<string, string> {
  const texts: Record<string, string> = {};
  for (const { key, ticked, lowS, usualS, highS, racks, oven, contact } of proposal.steps) {
    const field = stepFields(key);
    if (ticked) texts[field.tick] = 'on';
    if (contact) texts[field.contact] = 'on';
    texts[field.low] = minutesTyped(lowS);
    texts[field.usual] = minutesTyped(usualS);
    texts[field.high] = minutesTyped(highS);
    if (racks > 0) texts[field.oven] = oven ? degreesTyped(oven.milliC, unit) : '';
  }
  for (const { name, usualS } of proposal.rules) {
    const field = ruleFields(name);
    texts[field.tick] = 'on';
    texts[field.minutes] = minutesTyped(usualS);
  }
  return texts;
}
