import { statesMatch } from '#lib/episode/eaten-amount';
import { dishesOf, amountContext } from '#lib/episode/context';
import type { Variant } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { amountsDiffer } from '#lib/swap/apply-swap';
import { unconfirmedParts } from '#lib/swap/unconfirmed-parts';

/** What the figures of a swap cannot say, in words. */
export interface SwapRemark {
  readonly code: 'unconfirmed' | 'state' | 'oven' | 'finished' | 'leftBehind' | 'byGrams';
  readonly lineId: string | null;
  readonly text: string;
}

/** What to bear in mind of a swap: raw beside cooked, the oven, the finished weight. */
export function swapRemarks(
  before: EpisodeFile,
  after: EpisodeFile,
  variant: Pick<Variant, 'segmentId' | 'steps'>,
): readonly SwapRemark[] {
  const [was, becomes] = [before, after].map((file) =>
    dishesOf(file.episode.segments).find(({ id }) => id === variant.segmentId),
  );
  if (!was || !becomes) return [];
  const foods = amountContext(after).foods;
  const swapped = becomes.recipe.lines.flatMap((line) => {
    const old = was.recipe.lines.find(({ id }) => id === line.id);
    const [first, second] = [old?.foodId, line.foodId].map((id) => foods.get(id ?? ''));
    return old && second && first?.id !== second.id ? [{ old, line, first, second }] : [];
  });
  const states = swapped.flatMap(({ line, first, second }): SwapRemark[] => {
    if (!first || statesMatch(first.version.state, second.version.state)) return [];
    const text = `${first.name} is stated ${STATE_WORDS[first.version.state]} and ${second.name} ${STATE_WORDS[second.version.state]}: the same grams are not the same amount of food.`;
    return [{ code: 'state', lineId: line.id, text }];
  });
  const left = swapped
    .filter(({ line }) => line.leftBehind.kind !== 'none')
    .map(({ line, second }): SwapRemark => {
      const text = `As much of ${second.name} is taken to stay behind as of what it replaces.`;
      return { code: 'leftBehind', lineId: line.id, text };
    });
  const byGrams = swapped
    .filter(({ old, line }) => old.planned === null && line.planned !== null && old.unit !== null)
    .filter(
      ({ line }) =>
        !variant.steps.some(
          (step) =>
            'lineId' in step && step.lineId === line.id && 'massMg' in step && step.massMg !== null,
        ),
    )
    .map(({ line, second }): SwapRemark => {
      const text = `${second.name} has no measure of that name: the same grams are taken.`;
      return { code: 'byGrams', lineId: line.id, text };
    });
  const unconfirmed = unconfirmedParts(before, after, variant.segmentId).map(
    ({ why, lineId, text: words }): SwapRemark => {
      const waits = why === 'match' ? 'food' : 'weight';
      const todo = why === 'match' ? 'waits for your word' : 'waits in a photo';
      const act = why === 'match' ? 'confirm' : 'type';
      const text = `The ${waits} of ${words} ${todo}, and these numbers rest on it: ${act} it before you answer with them.`;
      return { code: 'unconfirmed', lineId, text };
    },
  );
  return [...unconfirmed, ...states, ...byGrams, ...left, ...ovenRemark(was), ...finishedRemark()];

  function finishedRemark(): SwapRemark[] {
    if (!was?.recipe.weighings.some(({ kind }) => kind === 'finished') || !becomes) return [];
    const changed = amountsDiffer(was.recipe, becomes.recipe);
    const text = changed
      ? 'The finished dish was weighed as it was made; with this it weighs something else, so that what goes by its grams is open until it is weighed.'
      : 'The finished dish is taken to weigh as much as it did; cooked with this it may weigh a little more or less.';
    return [{ code: 'finished', lineId: null, text }];
  }
}

function ovenRemark({
  steps,
}: {
  readonly steps: readonly { readonly title: string; readonly oven: unknown }[];
}): SwapRemark[] {
  const baked = steps.filter(({ oven }) => oven !== null).map(({ title }) => title);
  if (baked.length === 0) return [];
  const text = `The time in the oven may change (${baked.join(', ')}): look at it and, where it matters, at the temperature inside, rather than at the clock.`;
  return [{ code: 'oven', lineId: null, text }];
}

const STATE_WORDS: Readonly<Record<string, string>> = {
  raw: 'raw',
  dry: 'dry',
  cooked: 'cooked',
  drained: 'drained',
  asIs: 'as it is',
};
