'use server';

import { failed, ok } from '#lib/result';
import { nextPlace } from '#lib/store/next-place';
import { readLoggedSteps } from '#lib/store/read-logged-steps';
import { readLastStep } from '#lib/store/read-step-ties';
import { MOST_STEPS } from '#lib/episode/step-limits';
import { checkedMethod, keptMethod } from '#lib/method/kept-method';
import { stepsToAdd } from '#lib/method/steps-to-add';
import { parseThenAct, typedTexts } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { change, changeAndClose, fieldOf, GONE, readDay } from './change';
import { choiceOf } from './method-choice';
import { methodEdits, methodTextEdit, type MethodText } from './method-edits';
import { offeredTexts, offerOf, proposalOf, unitOf } from './method-offer';
import { methodForm, type MethodSent } from './method-schema';

/**
 * Reads a method and offers its steps; adds those that are ticked, with the text, or keeps the text alone once another
 * button is pressed.
 */
export async function pasteMethod(state: FormState, form: FormData): Promise<FormState> {
  const act = form.get('act');
  const does = act === 'add' ? addSteps : act === 'keep' ? keepText : readSteps;
  return withOffer(await does(state, form));
}

/** The text becomes the dish's method as it stands in the form, without any step. */
async function keepText(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(methodForm, state, form, async (sent) => {
    const found = await find(sent);
    if (!found) return GONE;
    const text = checkedMethod(sent.method);
    if (!text.ok) return text;
    const method = methodOf(found, text.value);
    if (!method) return ok('The method stands as it was.');
    const label = `Keep the method of ${found.segment.title}`;
    return change(sent.episodeId, label, [methodTextEdit(method)]);
  });
}

/** Nothing is stored by reading. A text that was read already keeps what was ticked and typed. */
async function readSteps(state: FormState, form: FormData): Promise<FormState> {
  let texts: Record<string, string> | null = null;
  const next = await parseThenAct(methodForm, state, form, async (sent) => {
    const found = await find(sent);
    if (!found) return GONE;
    const proposal = proposalOf(found, sent.method);
    if (!proposal.ok) return proposal;
    const { episodeId, segmentId, method } = sent;
    const own = { episodeId, segmentId, method, read: method };
    texts =
      sent.read === method
        ? { ...typedTexts(form), ...own }
        : { ...offeredTexts(proposal.value, unitOf(found.file)), ...own };
    const count = proposal.value.steps.length;
    return ok(
      `${count === 1 ? 'One step was' : `${count} steps were`} read. Nothing is added before you say so.`,
    );
  });
  return texts === null ? next : { ...next, round: state.round, typed: texts };
}

async function addSteps(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    methodForm,
    state,
    form,
    async (sent) => {
      const found = await find(sent);
      if (!found) return GONE;
      const { file, segment, rev } = found;
      if (sent.method !== sent.read) return CHANGED;
      const proposal = proposalOf(found, sent.read);
      if (!proposal.ok) return proposal;
      const chosen = choiceOf(proposal.value, sent, unitOf(file));
      if (!chosen.ok) return chosen;
      const { episodeId, segmentId } = sent;
      const lastStepId = await readLastStep(segmentId);
      const add = stepsToAdd(proposal.value, chosen.value, lastStepId !== null);
      const most = MOST_STEPS - segment.steps.length;
      if (add.steps.length > most) return tooMany(add.steps.length, most);
      const { method = '' } = segment.recipe ?? {};
      const text = keptMethod(method, sent.method, lastStepId !== null);
      if (!text.ok) return text;
      const { edits, firstId } = methodEdits(add, {
        episodeId,
        segmentId,
        segmentRev: rev,
        lastStepId,
        stepPlace: await nextPlace('Step', segmentId),
        tiePlace: await nextPlace('StepLink', episodeId),
        method: methodOf(found, text.value),
      });
      const count = add.steps.length === 1 ? 'a step' : `${add.steps.length} steps`;
      return changeAndClose(episodeId, firstId, `Add ${count} to ${segment.title}`, edits);
    },
    fieldOf,
  );
}

const CHANGED = failed({
  path: 'method',
  code: 'changed',
  message: 'The text was changed since it was read: read it again, then add its steps.',
});

function tooMany(count: number, most: number) {
  const message = `A dish holds ${MOST_STEPS} steps: ${most} more fit, and these are ${count}. Take some ticks away.`;
  return failed({ path: 'method', code: 'too-many', message });
}

type Found = NonNullable<Awaited<ReturnType<typeof find>>>;

/** The text for the dish to keep; null where it has the same, or is no dish. */
function methodOf({ segment, revs }: Found, text: string): MethodText | null {
  const { recipe } = segment;
  if (!recipe || recipe.method === text) return null;
  return { recipeId: recipe.id, rev: revs[recipe.id] ?? 0, text };
}

async function find({ episodeId, segmentId }: Pick<MethodSent, 'episodeId' | 'segmentId'>) {
  const read = await readDay(episodeId);
  const segment = read?.file.episode.segments.find(({ id }) => id === segmentId);
  if (!read || !segment) return null;
  const logged = await readLoggedSteps(read.file.kitchen.id);
  const { file, revs } = read;
  return { file, segment, revs, rev: revs[segmentId] ?? 0, logged };
}

/** What was read last stands in the form whatever came of it; drawn from the text, not from what was sent. */
async function withOffer(state: FormState): Promise<FormState> {
  const { episodeId, segmentId, read, offer: _old, ...typed } = state.typed;
  if (!episodeId || !segmentId || !read) return state;
  const found = await find({ episodeId, segmentId });
  if (!found) return state;
  const proposal = proposalOf(found, read);
  const offer = proposal.ok ? JSON.stringify(offerOf(proposal.value, unitOf(found.file))) : '';
  return { ...state, typed: { ...typed, episodeId, segmentId, read, offer } };
}
