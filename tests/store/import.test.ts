import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parseEpisodeData } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { database } from '#lib/store/client';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { writeReference } from '#lib/store/write-reference';
import { AT, dropFreshDatabase, freshDatabase } from './database';
import { BARLEY, FILE, SALT } from './fixture';
import { upToIds } from './up-to-ids';

let folder = '';
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'slate-import-'));
  await freshDatabase(join(folder, 'test.db'));
});
afterEach(async () => {
  await dropFreshDatabase();
  rmSync(folder, { recursive: true, force: true });
});

async function imported(file: EpisodeFile): Promise<string> {
  const result = await importEpisodeFile(file, AT);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value.episodeId;
}
async function readBack(episodeId: string): Promise<EpisodeFile> {
  const file = await readEpisodeFile(episodeId, FILE.savedAt);
  if (!file) throw new Error('The episode is not there');
  return file;
}

const loadTable = () =>
  writeReference([BARLEY, SALT], { source: 'Harbour table', release: 'H1', at: AT });

describe('an imported file', () => {
  it('is a valid file to begin with', () => {
    expect(parseEpisodeData(FILE)).toMatchObject({ ok: true });
  });

  it('reads back as it was, up to ids', async () => {
    const file = await readBack(await imported(FILE));
    expect(upToIds(file)).toEqual(upToIds(FILE));
    expect(parseEpisodeData(JSON.parse(JSON.stringify(file)))).toMatchObject({ ok: true });
  });

  it('reads back as it was where its foods stand in a loaded table, and uses those', async () => {
    await loadTable();
    const file = await readBack(await imported(FILE));
    expect(upToIds(file)).toEqual(upToIds(FILE));
    expect(file.foods.map((food) => food.id)).toEqual(
      expect.arrayContaining(['f-barley', 'f-salt']),
    );
    expect(await database().food.count({ where: { kind: 'reference' } })).toBe(2);
  });

  it('keeps its own foods where the table of the same number says something else', async () => {
    const values = { ...BARLEY.version.values, protein: { kind: 'eq', mantissa: 99, scale: 1 } };
    const other = { ...BARLEY, version: { ...BARLEY.version, values } } as typeof BARLEY;
    await writeReference([other, SALT], { source: 'Harbour table', release: 'H1', at: AT });
    const file = await readBack(await imported(FILE));
    expect(upToIds(file)).toEqual(upToIds(FILE));
    expect(file.foods.map((food) => food.id)).not.toContain('f-barley');
  });

  it('gives each ingredient its own cook again, however often it is brought in, and shares the food', async () => {
    const own = structuredClone(FILE);
    const line = own.episode.segments
      .flatMap(({ recipe }) => recipe?.lines ?? [])
      .find(({ foodId }) =>
        own.foods.some(({ id, kind }) => id === foodId && kind !== 'reference'),
      );
    const food = own.foods.find(({ id }) => id === line?.foodId);
    if (!line || !food) throw new Error('the file has an own food in use');
    const weights = { method: 'pan', rawMg: 500_000, cookedMg: 360_000, source: 'my own weights' };
    food.yields.push({ id: 'mine', ...weights, own: { halfMg: 500, lineId: line.id } });
    const ids = [await imported(own), await imported(own), await imported(own)];
    const foodIds = new Set<string>();
    for (const id of ids) {
      const file = await readBack(id);
      const lines = file.episode.segments.flatMap(({ recipe }) => recipe?.lines ?? []);
      const again = lines.find(({ text }) => text === line.text);
      const used = file.foods.find((each) => each.id === again?.foodId);
      foodIds.add(used?.id ?? '');
      const cooks = used?.yields.filter(({ own: of }) => of?.lineId === again?.id);
      expect(cooks).toMatchObject([weights]);
    }
    expect(foodIds.size).toBe(1);
  });

  it("adds a file's own measures to a food of a table as the creator's", async () => {
    await loadTable();
    const mine = {
      id: 'm-mine',
      name: 'my mug',
      qtyNum: 1,
      qtyDen: 1,
      massMg: 310_000,
      digits: 0,
      source: 'me',
    };
    const foods = FILE.foods.map((food) =>
      food.id === 'f-barley' ? { ...food, measures: [...food.measures, mine] } : food,
    );
    const file = await readBack(await imported({ ...FILE, foods }));
    expect(upToIds(file)).toEqual(upToIds({ ...FILE, foods }));
  });

  it('shares foods, kitchen, stock and packs when it is imported twice', async () => {
    const first = await imported(FILE);
    const counts = () =>
      Promise.all([
        database().food.count(),
        database().kitchen.count(),
        database().stockLot.count(),
        database().pack.count(),
        database().creator.count(),
      ]);
    const before = await counts();
    const second = await imported(FILE);
    expect(await counts()).toEqual(before);
    expect(second).not.toBe(first);
    expect(upToIds(await readBack(second))).toEqual(upToIds(FILE));
  });

  it('may use the same local id for things of different kinds', async () => {
    const text = JSON.stringify(FILE).replaceAll(/("\w*[iI]d":")(?:s|st|l|f|o|sc)-/g, '$1');
    expect(text.match(/"id":"barley"/g)).toHaveLength(2);
    const file = await readBack(await imported(JSON.parse(text) as EpisodeFile));
    expect(upToIds(file)).toEqual(upToIds(FILE));
  });

  it('is one act of the journal, and one undo takes it back', async () => {
    const episodeId = await imported(FILE);
    const groups = await database().change.groupBy({ by: ['groupId'] });
    expect(groups).toHaveLength(1);
    const undone = await undo(groups[0]?.groupId ?? '', { actor: 'me', at: AT });
    expect(undone.ok).toBe(true);
    expect(await readEpisodeFile(episodeId, FILE.savedAt)).toBeNull();
    expect(await database().food.count({ where: { deletedAt: null } })).toBe(0);
  });

  it('that names what it does not hold is refused, with the path', async () => {
    const day = { ...FILE.day, pins: [{ id: 'p', stepId: 'nowhere', notBeforeMin: 0 }] };
    const result = await importEpisodeFile({ ...FILE, day } as EpisodeFile, AT);
    expect(result).toMatchObject({
      ok: false,
      problems: [{ path: 'day.pins[0].stepId', code: 'unknown-id' }],
    });
    expect(await database().episode.count()).toBe(0);
  });

  it('of forty varied files reads back as it was', async () => {
    const text = fc.string({ unit: 'grapheme', maxLength: 40 }).filter((s) => !s.includes('\0'));
    const whole = (max: number) => fc.integer({ min: 0, max });
    const variation = fc.record({
      // Blanks at the ends of a title are taken off.
      title: text.map((s) => `x${s}x`),
      hook: text,
      amount: fc.double({ min: 0, max: 1e6, noNaN: true }).map((x) => x + 0),
      lat: fc.option(fc.double({ min: -90, max: 90, noNaN: true }).map((x) => x + 0)),
      mantissa: fc.integer({ min: 0, max: Number.MAX_SAFE_INTEGER }),
      scale: whole(6),
      mg: whole(1_000_000_000),
      num: whole(1_000_000_000),
      ms: whole(999),
      segments: fc.shuffledSubarray([...FILE.episode.segments.keys()], { minLength: 3 }),
      withDay: fc.boolean(),
      url: fc.webUrl().filter((url) => url.length <= 400),
    });
    await fc.assert(
      fc.asyncProperty(variation, async (v) => {
        const segments = v.segments.flatMap((at) => FILE.episode.segments[at] ?? []);
        const values = {
          ...BARLEY.version.values,
          iron: { kind: 'eq' as const, mantissa: v.mantissa, scale: v.scale },
        };
        const file: EpisodeFile = {
          ...FILE,
          kitchen: { ...FILE.kitchen, lat: v.lat },
          foods: FILE.foods.map((food) =>
            food.id === 'f-barley' ? { ...food, version: { ...food.version, values } } : food,
          ),
          episode: {
            ...FILE.episode,
            title: v.title,
            hook: v.hook,
            segments: segments.map((segment) => ({
              ...segment,
              eaten: { num: v.num, den: v.num + 1 > 1e9 ? 1 : v.num + 1 },
            })),
            targets: FILE.episode.targets.map((target) => ({ ...target, amount: v.amount })),
            webLinks: [{ id: 'wl', label: v.hook, url: v.url }],
          },
          day: v.withDay ? FILE.day : null,
          said: v.withDay ? FILE.said : [],
          stock: FILE.stock.map((lot) => ({
            ...lot,
            place: v.title,
            moves: lot.moves.map((move) => ({ ...move, deltaMg: -v.mg })),
          })),
        };
        const parsed = parseEpisodeData(JSON.parse(JSON.stringify(file)));
        if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
        await freshDatabase(join(folder, `v${Math.round(v.amount * 1e6)}-${v.mg}-${v.num}.db`));
        expect(upToIds(await readBack(await imported(parsed.value)))).toEqual(
          upToIds(parsed.value),
        );
      }),
      { numRuns: 40 },
    );
    // Forty databases: on a server each is made and dropped.
  }, 240_000);
});

describe('what is read after something was removed', () => {
  const removeFirst = async (entity: 'Segment' | 'Step' | 'RecipeLine' | 'Food', id: string) => {
    const result = await write({
      actor: 'me',
      label: 'Remove',
      at: AT,
      edits: [{ op: 'remove', entity, id, rev: 1 }],
    });
    expect(result.ok).toBe(true);
  };

  it('is a whole file still: nothing in it names what is gone', async () => {
    const episodeId = await imported(FILE);
    const before = await readBack(episodeId);
    const pots = before.episode.segments[2];
    const bake = before.episode.segments[1]?.steps[1];
    const barley = before.episode.segments[1]?.recipe?.lines[0];
    await removeFirst('Segment', pots?.id ?? '');
    await removeFirst('Step', bake?.id ?? '');
    await removeFirst('RecipeLine', barley?.id ?? '');
    const after = await readBack(episodeId);
    expect(parseEpisodeData(JSON.parse(JSON.stringify(after)))).toMatchObject({ ok: true });
    const skillet = after.episode.segments[1];
    expect(after.episode.segments).toHaveLength(2);
    expect(after.episode.links).toEqual([]);
    expect(skillet?.shots[0]?.stepId).toBeNull();
    expect(skillet?.perishables[0]?.spans).toEqual([]);
    expect(skillet?.recipe?.weighings[0]?.shares).toHaveLength(1);
    expect(after.day?.pins).toEqual([]);
  });

  it('keeps the numbers of a dish whose food was removed from the larder', async () => {
    const episodeId = await imported(FILE);
    const food = (await readBack(episodeId)).foods.find((f) => f.name.startsWith('Quay'));
    await removeFirst('Food', food?.id ?? '');
    expect(upToIds(await readBack(episodeId))).toEqual(upToIds(FILE));
  });
});

describe('readRevisions', () => {
  it('has every row of the file', async () => {
    const episodeId = await imported(FILE);
    const revisions = await readRevisions(episodeId);
    const file = await readBack(episodeId);
    const ids = [...JSON.stringify(file).matchAll(/"id":"([^"]+)"/g)].map(([, id]) => id ?? '');
    expect(ids.length).toBeGreaterThan(40);
    const creator = file.creator.id;
    expect(ids.filter((id) => !(id in revisions))).toEqual([]);
    expect(revisions[creator]).toBe(1);
    expect(await readRevisions('nowhere')).toEqual({});
  });
});
