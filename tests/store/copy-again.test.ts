import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { dishAgain, episodeAgain } from '#lib/episode/again';
import { parseEpisodeData } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { takeLock } from '#lib/lock/numbers-lock';
import { database } from '#lib/store/client';
import { copyEpisode, copySegment } from '#lib/store/copy-again';
import { importEpisodeFile } from '#lib/store/import-file';
import { sameLabelEdits } from '#lib/store/label-again';
import { readCopies, readCopyNotes, readDishesToCopy } from '#lib/store/read-again';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readFood, readFoodVersions } from '#lib/store/read-foods';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { demoFile } from '../ui/page-support';
import { AT, dropFreshDatabase, freshDatabase } from './database';
import { FILE } from './fixture';
import { upToIds } from './up-to-ids';

let folder = '';
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'slate-again-'));
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
const BY = { amounts: 'weighed', at: AT } as const;
const idsIn = (value: unknown) => new Set(JSON.stringify(value).match(/(?<="id":")[^"]+/g));

async function copiedSkillet() {
  const from = await readBack(await imported(FILE));
  const into = await imported({
    ...FILE,
    episode: { ...FILE.episode, title: 'Next week', segments: [], links: [], targets: [] },
    day: null,
  });
  const dish = from.episode.segments.find(({ title }) => title === 'Barley skillet');
  if (!dish) throw new Error('no dish');
  const copied = await copySegment(dish.id, into, BY);
  if (!copied.ok) throw new Error(JSON.stringify(copied.problems));
  return { from, into, dish, copied: copied.value };
}

describe('a copied dish', () => {
  it('stands at the end as the pure copy says, every row new, its recipe naming the original', async () => {
    const { from, into, dish, copied } = await copiedSkillet();
    const { episode } = await readBack(into);
    const pure = dishAgain(from, dish);
    const both = { segments: episode.segments, links: episode.links };
    const one = (some: object) =>
      upToIds({ ...from, day: null, stock: [], packs: [], foods: [], episode: some } as never);
    expect(one(both)).toEqual(one({ segments: [pure.segment], links: pure.links }));
    const [old, made] = [idsIn(from.episode), idsIn(both)];
    expect([...made].filter((id) => old.has(id))).toEqual([]);
    expect(episode.segments[0]?.id).toBe(copied.id);
    const recipe = await database().recipe.findFirst({
      where: { id: episode.segments[0]?.recipe?.id ?? '' },
    });
    expect(recipe?.forkedFromId).toBe(dish.recipe?.id);
    // A second copy stands after the first.
    await copySegment(dish.id, into, BY);
    expect((await readBack(into)).episode.segments.map(({ id }) => id)[0]).toBe(copied.id);
  });

  it('is one act of the journal, whose undo takes all of it out', async () => {
    const { into, copied } = await copiedSkillet();
    const changes = await database().change.findMany({ where: { groupId: copied.groupId } });
    expect(new Set(changes.map(({ label }) => label))).toEqual(
      new Set(['Again, from Barley skillet']),
    );
    expect(await undo(copied.groupId, { actor: 'test', at: AT })).toMatchObject({ ok: true });
    expect((await readBack(into)).episode).toMatchObject({ segments: [], links: [] });
    for (const { entity, entityId } of changes) {
      const table = `${entity.charAt(0).toLowerCase()}${entity.slice(1)}`;
      const row = await (
        database() as never as Record<
          string,
          { findUnique(of: object): Promise<{ deletedAt: Date | null }> }
        >
      )[table]?.findUnique({ where: { id: entityId } });
      expect(row?.deletedAt, `${entity} ${entityId}`).not.toBeNull();
    }
  });

  it('leaves the original as it was', async () => {
    const { from } = await copiedSkillet();
    expect(await readBack(from.episode.id)).toEqual(from);
  });

  it('of something that is gone is refused in words', async () => {
    const { into } = await copiedSkillet();
    expect(await copySegment('nothing', into, BY)).toMatchObject({
      ok: false,
      problems: [{ code: 'gone' }],
    });
    expect(await copyEpisode('nothing', BY)).toMatchObject({ ok: false });
  });
});

describe('a copied episode', () => {
  it('has the demo’s ovens and appliances for its steps', async () => {
    const from = await readBack(await imported(demoFile()));
    const copied = await copyEpisode(from.episode.id, BY);
    if (!copied.ok) throw new Error(JSON.stringify(copied.problems));
    const places = ({ episode }: typeof from) =>
      episode.segments.flatMap(({ steps }) => steps.map((step) => [step.oven, step.applianceId]));
    expect(places(await readBack(copied.value.id))).toEqual(places(from));
    expect(places(from).some(([, appliance]) => appliance !== null)).toBe(true);
  });

  it('reads as the pure copy says, up to ids, with its targets at the new segments', async () => {
    const from = await readBack(await imported(FILE));
    const copied = await copyEpisode(from.episode.id, BY);
    if (!copied.ok) throw new Error(JSON.stringify(copied.problems));
    const file = await readBack(copied.value.id);
    const { episode } = episodeAgain(from);
    expect(upToIds(file)).toEqual(upToIds({ ...from, episode, day: null, said: [] }));
    expect(parseEpisodeData(JSON.parse(JSON.stringify(file)))).toMatchObject({ ok: true });
    const old = idsIn(from.episode);
    expect([...idsIn(file.episode)].filter((id) => old.has(id))).toEqual([]);
    const target = file.episode.targets.find(({ segmentId }) => segmentId !== null);
    expect(file.episode.segments.map(({ id }) => id)).toContain(target?.segmentId);
    expect(await undo(copied.value.groupId, { actor: 'test', at: AT })).toMatchObject({ ok: true });
    expect(await readEpisodeFile(copied.value.id, FILE.savedAt)).toBeNull();
  });
});

describe('the same label', () => {
  it('adds a reading of today that says what the last one said, and keeps that', async () => {
    const { from } = await copiedSkillet();
    const id = from.foods.find(({ name }) => name === 'Quay cheese, grated')?.id ?? '';
    const before = await readFood(id);
    if (!before) throw new Error('no food');
    const edits = sameLabelEdits(before, '2026-06-03');
    await write({ actor: 'test', label: 'Same label', at: AT, edits });
    const after = await readFood(id);
    expect(after?.version).toEqual({
      ...before.version,
      id: after?.version.id,
      seq: before.version.seq + 1,
      dateRead: '2026-06-03',
    });
    expect(after?.measures.length).toBe(before.measures.length);
    expect((await readFoodVersions(id)).map(({ dateRead }) => dateRead)).toEqual([
      '2026-06-03',
      '2026-04-30',
    ]);
  });
});

describe('where a copy comes from', () => {
  it('is told with the day it was made, what stayed behind, and labels read again since', async () => {
    const { from, into, dish, copied } = await copiedSkillet();
    const lock = takeLock(from);
    const row = { id: 'lock', episodeId: from.episode.id, seq: 1, ...lock, at: AT };
    const { inputsSha256: _, ...columns } = row;
    await write({
      actor: 'test',
      label: 'Lock',
      at: AT,
      edits: [{ op: 'create', entity: 'NumbersLock', row: columns }],
    });
    const copies = await readCopies(await readBack(into));
    expect(copies).toEqual([
      {
        segmentId: copied.id,
        copiedOn: '2026-05-02',
        from: {
          segmentId: dish.id,
          title: 'Barley skillet',
          episodeId: from.episode.id,
          episodeTitle: FILE.episode.title,
        },
      },
    ]);
    const notes = async () => readCopyNotes(await readBack(into), copies, copied.id);
    expect((await notes()).join('\n')).toMatch(/^The tie from “st-bake” to “st-pour”/);
    expect((await notes()).join('\n')).not.toMatch(/label/);
    const food = from.foods.find(({ name }) => name === 'Quay cheese, grated');
    if (!food) throw new Error('no food');
    const edits = sameLabelEdits(food, '2026-06-03');
    await write({ actor: 'test', label: 'Same label', at: AT, edits });
    expect(await notes()).toContain(
      'Quay cheese, grated: the label was read again on Wed 3 Jun 2026 and says the same',
    );
  });

  it('is found by the last date, by words of dish or episode, and in parts', async () => {
    await imported(FILE);
    const later = { ...FILE.episode, title: 'Winter trays', publishOn: '2026-11-01' };
    await imported({ ...FILE, episode: later, day: null });
    const found = async (of: Parameters<typeof readDishesToCopy>[0]) => {
      const { dishes, more } = await readDishesToCopy(of);
      return { titles: dishes.map(({ title, date }) => `${title} ${date}`), more };
    };
    expect(await found({})).toEqual({
      titles: [
        'Barley skillet 2026-11-01',
        's-pots 2026-11-01',
        'Barley skillet 2026-05-02',
        's-pots 2026-05-02',
      ],
      more: false,
    });
    expect(await found({ words: 'WINTER barley' })).toEqual({
      titles: ['Barley skillet 2026-11-01'],
      more: false,
    });
    expect(await found({ take: 1 })).toMatchObject({ more: true });
    expect(await found({ words: 'nothing so' })).toEqual({ titles: [], more: false });
  });
});
