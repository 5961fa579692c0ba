import { describe, expect, it } from 'vitest';
import { episodeFileText, parseEpisodeFile } from '#lib/episode/file';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import type { Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { copyEpisode, copySegment } from '#lib/store/copy-again';
import { lineColumns } from '#lib/store/episode-columns';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { removalEdits } from '#lib/store/remove-rows';
import type { EntityName } from '#lib/store/rows';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';
import { AT, withFreshDatabase } from './database';
import { upToIds } from './up-to-ids';

withFreshDatabase();

const BY = { actor: 'me', at: AT };
const AMOUNTS = { amounts: 'planned', at: AT } as const;

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
const nth = <T>(items: readonly T[], n: number): T => {
  const item = items[n];
  if (item === undefined) throw new Error(`no ${n}`);
  return item;
};
async function fileOf(episodeId: string): Promise<EpisodeFile> {
  const file = await readEpisodeFile(episodeId, AT.toISOString());
  if (!file) throw new Error(`no episode ${episodeId}`);
  return file;
}
const brought = async (file: EpisodeFile) => value(await importEpisodeFile(file, AT)).episodeId;

const one = (num: number, den = 1) => ({ low: { num, den }, high: { num, den } });
const madeFrom = (id: string, recipeId: string, more: Partial<RecipeLine> = {}): RecipeLine =>
  aLine(id, null, { madeFrom: { recipeId, rev: 1 }, quantity: one(1, 2), unit: 'batch', ...more });

const OATS = aFood('oats', { energyKcal: '379', protein: '13.15' });
const SAUCE = aRecipe(
  'r-sauce',
  [madeFrom('l-stock', 'r-stock'), grams('l-tomatoes', 'oats', 400)],
  {
    title: 'Sauce',
    portions: [{ id: 'p-ladle', kind: 'mass', name: 'a ladle', massMg: 80_000 }],
    weighings: [aReading('w-sauce', 'finished', 600, { at: '2026-03-07T10:00:00Z' })],
  },
);
const STOCK = aRecipe('r-stock', [grams('l-bones', 'oats', 500)], {
  title: 'Stock',
  cooking: {
    moisturePermille: -100,
    fatPermille: 0,
    spreadPermille: 50,
    source: 'my own three trays',
  },
});
const ladles = madeFrom('l-sauce', 'r-sauce', {
  quantity: one(2),
  unit: 'portion',
  measureName: 'a ladle',
});
/** Lasagne from sauce from stock; the lasagne is a dish of the episode, the others came along with it. */
const APART = aFile([aDish('s-lasagne', aRecipe('r-lasagne', [ladles]))], [OATS], {
  recipes: [SAUCE, STOCK],
});
/** The same with all three as dishes of one episode, the deepest last. */
const TOGETHER = aFile(
  [
    aDish('s-lasagne', aRecipe('r-lasagne', [ladles])),
    aDish('s-sauce', SAUCE, { title: 'Sauce' }),
    aDish('s-stock', STOCK, { title: 'Stock' }),
  ],
  [OATS],
);
const proteinOf = (file: EpisodeFile) =>
  episodeFigures(file, ['protein']).dishes.map(({ whole }) => whole.protein);
const recipeOf = (file: EpisodeFile, at: number): Recipe => {
  const { recipe } = nth(file.episode.segments, at);
  if (!recipe) throw new Error('no recipe');
  return recipe;
};

describe('recipes two deep', () => {
  it.each([
    ['that came along', APART],
    ['that are dishes of the same episode', TOGETHER],
  ])(
    '%s survive import and reading up to ids, and the file so read is a file again',
    async (_, file) => {
      const read = await fileOf(await brought(file));
      expect(upToIds(read)).toEqual(upToIds({ ...file, savedAt: read.savedAt }));
      expect(value(parseEpisodeFile(episodeFileText(read)))).toEqual(read);
      expect(proteinOf(read)[0]?.value).toBe(proteinOf(file)[0]?.value);
      // 2 × 80 g of 600 g, of 400 g and half of 500 g.
      expect(proteinOf(read)[0]?.value).toBeCloseTo((160 / 600) * 650 * 0.1315, 9);
    },
  );

  it('are copied with their episode, and the copies are made from each other', async () => {
    const from = await brought(TOGETHER);
    const copy = await fileOf(value(await copyEpisode(from, AMOUNTS)).id);
    const [lasagne, sauce, stock] = [0, 1, 2].map((at) => recipeOf(copy, at));
    expect(lasagne?.lines[0]?.madeFrom?.recipeId).toBe(sauce?.id);
    expect(sauce?.lines[0]?.madeFrom?.recipeId).toBe(stock?.id);
    expect(copy.recipes).toEqual([]);
    const original = await fileOf(from);
    expect(recipeOf(original, 1).id).not.toBe(sauce?.id);
  });

  it('stay where they are when the dish made from them is copied alone, into the same or another episode', async () => {
    const from = await brought(TOGETHER);
    const original = await fileOf(from);
    const lasagne = nth(original.episode.segments, 0);
    const other = await brought(aFile([], []));
    for (const into of [from, other]) {
      value(await copySegment(lasagne.id, into, AMOUNTS));
      const file = await fileOf(into);
      const copied = recipeOf(file, file.episode.segments.length - 1);
      expect(copied.lines[0]?.madeFrom?.recipeId).toBe(recipeOf(original, 1).id);
      expect(proteinOf(file).at(-1)?.value).toBe(proteinOf(original)[0]?.value);
    }
    expect((await fileOf(other)).recipes.map(({ title }) => title).sort()).toEqual([
      'Sauce',
      'Stock',
    ]);
  });
});

describe('a dish that others are made from', () => {
  async function takeOut(episodeId: string, entity: EntityName, id: string) {
    const rev = (await readRevisions(episodeId))[id] ?? 0;
    const edits = await removalEdits(entity, id, rev);
    return value(await write({ ...BY, label: `Take out ${entity}`, edits }));
  }

  it('is let go of when it is taken out, here and in other episodes; undo brings all of it back', async () => {
    const from = await brought(TOGETHER);
    const original = await fileOf(from);
    const other = await brought(aFile([], []));
    value(await copySegment(nth(original.episode.segments, 0).id, other, AMOUNTS));
    const before = [await fileOf(from), await fileOf(other)];
    const gone = await takeOut(from, 'Segment', nth(original.episode.segments, 1).id);
    for (const [file, at] of [
      [await fileOf(from), 0],
      [await fileOf(other), 0],
    ] as const) {
      expect(recipeOf(file, at).lines[0]).toMatchObject({ madeFrom: null, text: 'l-sauce' });
      const [figure] = proteinOf(file);
      expect(figure).toMatchObject({ low: null, high: null });
      // What is left can be written and read as a file.
      expect(value(parseEpisodeFile(episodeFileText(file)))).toEqual(file);
    }
    value(await undo(gone.groupId, BY));
    const after = [await fileOf(from), await fileOf(other)];
    // The ingredient has been let go of and taken up again; all else is as it was.
    expect(after).toEqual(before);
  });

  it('leaves an amount open whose portion was taken out, and never takes another portion for it', async () => {
    const episodeId = await brought(TOGETHER);
    const before = await fileOf(episodeId);
    const ladle = nth(recipeOf(before, 1).portions, 0);
    const row = { recipeId: recipeOf(before, 1).id, position: 1, name: 'a bucket' };
    const bucket = {
      id: 'p-bucket',
      ...row,
      kind: 'mass',
      ofCount: null,
      massMg: 500_000,
    } as const;
    value(
      await write({ ...BY, label: 'x', edits: [{ op: 'create', entity: 'Portion', row: bucket }] }),
    );
    const gone = await takeOut(episodeId, 'Portion', ladle.id);
    const file = await fileOf(episodeId);
    expect(proteinOf(file)[0]).toMatchObject({ low: null, high: null });
    expect(proteinOf(file)[0]?.missing[0]).toMatchObject({ reason: 'noGrams', text: 'l-sauce' });
    expect(value(parseEpisodeFile(episodeFileText(file)))).toEqual(file);
    value(await undo(gone.groupId, BY));
    expect(proteinOf(await fileOf(episodeId))[0]?.value).toBe(proteinOf(before)[0]?.value);
  });
});

describe('a ring of dishes', () => {
  const tie = (id: string, recipeId: string, madeFromId: string): Edit => {
    const columns = lineColumns(aLine(`made from ${madeFromId}`, null));
    const row = { id, recipeId, position: 9, ...columns, madeFromId, madeFromRev: 1 };
    return { op: 'create', entity: 'RecipeLine', row };
  };
  const add = (...edits: Edit[]) => write({ ...BY, label: 'Add', edits });
  async function dishes() {
    const episodeId = await brought(TOGETHER);
    const file = await fileOf(episodeId);
    const ids = [0, 1, 2].map((at) => recipeOf(file, at).id);
    return { episodeId, lasagne: nth(ids, 0), sauce: nth(ids, 1), stock: nth(ids, 2) };
  }

  it('is refused with its dishes by name, at any depth, and nothing is written', async () => {
    const { episodeId, lasagne, sauce, stock } = await dishes();
    const before = await fileOf(episodeId);
    const refused = async (edit: Edit) => {
      const result = await add(edit);
      return result.ok ? null : result.problems;
    };
    expect(await refused(tie('a', sauce, sauce))).toMatchObject([
      { code: 'ring', path: 'edits[0].row.madeFromId', facts: { ring: 'Sauce → Sauce' } },
    ]);
    expect(await refused(tie('b', stock, lasagne))).toMatchObject([
      { message: 'This would make a dish from itself: Stock → s-lasagne → Sauce → Stock.' },
    ]);
    expect(await fileOf(episodeId)).toEqual(before);
    // The same dish twice is none.
    expect(await refused(tie('c', lasagne, stock))).toBeNull();
  });

  it('cannot be closed by two at once: the second is refused', async () => {
    const empty = (n: number) => aDish(`s${n}`, aRecipe(`r${n}`, []), { title: `Dish ${n}` });
    const file = await fileOf(await brought(aFile([empty(1), empty(2)], [])));
    const [first, second] = [recipeOf(file, 0).id, recipeOf(file, 1).id];
    const both = await Promise.all([add(tie('a', first, second)), add(tie('b', second, first))]);
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
    // Nor by one act that holds both.
    const one = await add(tie('c', first, second), tie('d', second, first));
    expect(one.ok).toBe(false);
  });

  it('is not closed by changing an ingredient, nor by undoing a removal', async () => {
    const { episodeId, lasagne, sauce } = await dishes();
    value(await add(tie('own', lasagne, sauce)));
    const gone = value(await add({ op: 'remove', entity: 'RecipeLine', id: 'own', rev: 1 }));
    const { lines } = recipeOf(await fileOf(episodeId), 0);
    const made = nth(lines, 0);
    const rev = (await readRevisions(episodeId))[made.id] ?? 0;
    const patch = { madeFromId: null };
    value(await add({ op: 'update', entity: 'RecipeLine', id: made.id, rev, patch }));
    value(await add(tie('back', sauce, lasagne)));
    const undone = await undo(gone.groupId, BY);
    expect(undone.ok ? null : undone.problems).toMatchObject([{ code: 'ring' }]);
    const again = await add({
      op: 'update',
      entity: 'RecipeLine',
      id: made.id,
      rev: rev + 1,
      patch: { madeFromId: sauce },
    });
    expect(again.ok ? null : again.problems).toMatchObject([
      { code: 'ring', path: 'edits[0].patch.madeFromId' },
    ]);
  });
});
