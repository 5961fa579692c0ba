import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { Nutrient } from '#lib/foods/nutrients';
import { aReading, cell } from '../support/build';
import { oneOf, uniform, whole } from '../support/uniform';
import { anyEpisode } from './compiled-kitchens';

const NUTRIENTS: readonly Nutrient[] = ['water', 'energyKj', 'fat', 'carbohydrate', 'sodium'];

type Edit = (file: EpisodeFile, random: () => number) => EpisodeFile;

function withRecipe(
  file: EpisodeFile,
  random: () => number,
  edit: (recipe: Recipe) => Recipe,
): EpisodeFile {
  const { segments } = file.episode;
  const which = oneOf(random, segments);
  const edited = segments.map((each) =>
    each === which && each.recipe ? { ...each, recipe: edit(each.recipe) } : each,
  );
  return { ...file, episode: { ...file.episode, segments: edited } };
}

const withLine = (
  edit: (line: RecipeLine, random: () => number, file: EpisodeFile) => RecipeLine,
) => {
  const whole: Edit = (file, random) =>
    withRecipe(file, random, (recipe) => {
      const at = Math.floor(random() * recipe.lines.length);
      const lines = recipe.lines.map((line, index) =>
        index === at ? edit(line, random, file) : line,
      );
      return { ...recipe, lines };
    });
  return whole;
};

/** Everything that a person may change, each as a new object beside all that stays the same object. */
const EDITS: Readonly<Record<string, Edit>> = {
  grams: withLine((line, random) => {
    const mg = whole(random, 1, 800) * 1000;
    return { ...line, planned: { lowMg: mg, valueMg: mg, highMg: mg } };
  }),
  food: withLine((line, random, file) => ({ ...line, foodId: oneOf(random, file.foods).id })),
  words: withLine((line) => ({ ...line, text: `${line.text} fresh` })),
  confirmed: withLine((line) => ({ ...line, match: 'provisional' })),
  order: (file, random) =>
    withRecipe(file, random, (recipe) => ({ ...recipe, lines: [...recipe.lines].reverse() })),
  gone: (file, random) =>
    withRecipe(file, random, (recipe) => ({ ...recipe, lines: recipe.lines.slice(1) })),
  reading: (file, random) =>
    withRecipe(file, random, (recipe) => {
      const [line] = recipe.lines;
      const shares = line ? [{ lineId: line.id, share: { num: 1, den: 1 } }] : [];
      const id = `again-${recipe.weighings.length}`;
      const reading = aReading(id, oneOf(random, ['raw', 'finished']), 400, { shares });
      return { ...recipe, weighings: [...recipe.weighings, reading] };
    }),
  scale: (file, random) => ({
    ...file,
    kitchen: {
      ...file.kitchen,
      scales: file.kitchen.scales.map((scale) => ({
        ...scale,
        resolutionMg: oneOf(random, [100, 2000]),
      })),
    },
  }),
  value: (file, random) => {
    const which = oneOf(random, file.foods);
    const values = { ...which.version.values, sodium: cell(String(whole(random, 1, 90))) };
    const edited = { ...which, version: { ...which.version, values } };
    return { ...file, foods: file.foods.map((food) => (food === which ? edited : food)) };
  },
  pack: (file) => ({ ...file, packs: file.packs.map((pack) => ({ ...pack, netMg: 250_000 })) }),
  region: (file) => ({
    ...file,
    episode: { ...file.episode, region: file.episode.region === 'US' ? 'EU' : 'US' },
  }),
  eaten: (file, random) => {
    const segments = file.episode.segments.map((each) => ({
      ...each,
      eaten: { num: whole(random, 0, 2), den: 2 },
    }));
    return { ...file, episode: { ...file.episode, segments } };
  },
};

const edited = fc.record({
  seed: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
  dishes: fc.integer({ min: 1, max: 3 }),
  lines: fc.integer({ min: 1, max: 5 }),
  plain: fc.boolean(),
  edits: fc.array(fc.constantFrom(...Object.keys(EDITS)), { minLength: 1, maxLength: 8 }),
});

describe('figures of an edited episode', () => {
  it('are to the last bit what they are without anything worked out before', () => {
    fc.assert(
      fc.property(edited, ({ seed, edits, ...size }) => {
        const random = uniform(seed);
        let file = anyEpisode(random, size);
        episodeFigures(file, NUTRIENTS);
        for (const name of edits) {
          file = EDITS[name]?.(file, random) ?? file;
          expect(episodeFigures(file, NUTRIENTS), name).toEqual(
            episodeFigures(structuredClone(file), NUTRIENTS),
          );
        }
      }),
      { numRuns: 60 },
    );
  });

  it('of two kitchens that share everything else are each kitchen’s own', () => {
    const file = anyEpisode(uniform(7), { dishes: 2, lines: 5, plain: true });
    const [scale] = file.kitchen.scales;
    if (!scale) throw new Error('a kitchen has a scale');
    const coarse = { ...file.kitchen, scales: [{ ...scale, resolutionMg: 20_000 }] };
    const rough = { ...file, kitchen: coarse };
    const alone = [file, rough].map((each) => episodeFigures(structuredClone(each)));
    expect([file, rough, file].map((each) => episodeFigures(each))).toEqual([...alone, alone[0]]);
    expect(alone[0]).not.toEqual(alone[1]);
  });

  it('gives back the very same dishes that were not edited', () => {
    const file = anyEpisode(uniform(11), { dishes: 3, lines: 4, plain: true });
    const before = episodeFigures(file);
    const [first, ...others] = file.episode.segments;
    if (!first?.recipe) throw new Error('an episode has a dish');
    const lines = first.recipe.lines.map((line, at) => (at > 0 ? line : { ...line, foodId: 'f1' }));
    const segments = [{ ...first, recipe: { ...first.recipe, lines } }, ...others];
    const after = episodeFigures({ ...file, episode: { ...file.episode, segments } });
    expect(after.dishes[0]).not.toBe(before.dishes[0]);
    expect(after.dishes[1]).toBe(before.dishes[1]);
    expect(after.dishes[2]).toBe(before.dishes[2]);
    expect(after.dishes[0]?.lines[1]).toBe(before.dishes[0]?.lines[1]);
  });

  it('keep nothing of what an episode was before', async () => {
    const before = editedAgainAndAgain(
      anyEpisode(uniform(12), { dishes: 3, lines: 4, plain: true }),
    );
    setFlagsFromString('--expose-gc');
    const collectGarbage = runInNewContext('gc') as () => void;
    // The machine itself may hold one that it worked on last; a dish that keeps what was before keeps all twelve.
    await expect
      .poll(() => {
        collectGarbage();
        return before.filter((each) => each.deref() !== undefined).length;
      })
      .toBeLessThan(3);
  });
});

/**
 * Works out every figure of an episode, of its dishes edited in turn: what is kept of one was worked out while others
 * were what they no longer are.
 */
function editedAgainAndAgain(first: EpisodeFile): readonly WeakRef<EpisodeFile>[] {
  const before: WeakRef<EpisodeFile>[] = [];
  let file = first;
  for (let turn = 0; turn < 12; turn += 1) {
    JSON.stringify(episodeFigures(file, NUTRIENTS));
    before.push(new WeakRef(file));
    file = withOtherGrams(file, turn);
  }
  JSON.stringify(episodeFigures(file, NUTRIENTS));
  return before;
}

function withOtherGrams(file: EpisodeFile, turn: number): EpisodeFile {
  const mg = 100_000 + turn;
  const segments = file.episode.segments.map((segment, at) => {
    const { recipe } = segment;
    if (!recipe || at !== turn % file.episode.segments.length) return segment;
    const [first, ...others] = recipe.lines;
    if (!first) return segment;
    const edited = { ...first, planned: { lowMg: mg, valueMg: mg, highMg: mg } };
    return { ...segment, recipe: { ...recipe, lines: [edited, ...others] } };
  });
  return { ...file, episode: { ...file.episode, segments } };
}
