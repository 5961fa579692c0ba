import { v7 as uuid } from 'uuid';
import { beforeEach, describe, expect, it } from 'vitest';
import { parseEpisodeData } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { stableJson } from '#lib/episode/stable-json';
import { takeLock } from '#lib/lock/numbers-lock';
import { actWords } from '#lib/overview/change-words';
import type { Result } from '#lib/result';
import type { Edit } from '#lib/store/command';
import { importEpisodeFile } from '#lib/store/import-file';
import { mergeEdits, readMerge } from '#lib/store/merge-foods';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { removalEdits } from '#lib/store/remove-rows';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';
import { LAYOUT, publishOf } from './publish-fixture';
import { upToIds } from './up-to-ids';

withFreshDatabase();

const dish = FILE.episode.segments.find(({ recipe }) => recipe && recipe.lines.length > 1);
const talk = FILE.episode.segments.find(({ recipe }) => recipe === null);
const line = dish?.recipe?.lines[0];
const ownFood = FILE.foods.find(({ kind }) => kind === 'label');
if (!dish || !talk || !line || !ownFood)
  throw new Error('the fixture lacks a dish, a talk or a label');
const WHOLE: EpisodeFile = {
  ...FILE,
  creator: { ...FILE.creator, layout: LAYOUT },
  publish: publishOf({
    ...{ segmentId: dish.id, talkId: talk.id, lineId: line.id, foodId: ownFood.id },
  }),
};
const BY = { actor: 'me', at: AT };

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
const act = async (...edits: Edit[]) => value(await write({ ...BY, label: 'Act', edits })).groupId;

async function read(id: string, publish = true): Promise<EpisodeFile> {
  const file = await readEpisodeFile(id, FILE.savedAt, { publish });
  if (!file) throw new Error('the episode is not there');
  return file;
}
async function publishNow() {
  const { publish } = await read(episodeId);
  if (!publish) throw new Error('nothing goes out');
  return publish;
}

let episodeId = '';
beforeEach(async () => {
  episodeId = value(await importEpisodeFile(WHOLE, AT)).episodeId;
});

describe('what goes out beside the video', () => {
  it('is imported and reads back as it was, up to ids', async () => {
    const file = await read(episodeId);
    expect(upToIds(file)).toEqual(upToIds(WHOLE));
    expect(parseEpisodeData(JSON.parse(JSON.stringify(file)))).toMatchObject({ ok: true });
  });

  it('is read only where it is asked for, and is absent where there is none', async () => {
    expect(await read(episodeId, false)).not.toHaveProperty('publish');
    const bare = value(await importEpisodeFile(FILE, AT)).episodeId;
    expect(await read(bare)).not.toHaveProperty('publish');
  });

  it('carries the foods that only a swap brings in', async () => {
    const [food] = FILE.foods;
    if (!food) throw new Error('the fixture has no food');
    const another = { ...food, kind: 'label' as const, id: 'f-new', name: 'Pea drink, invented' };
    const withFood: EpisodeFile = {
      ...WHOLE,
      foods: [...WHOLE.foods, { ...another, version: { ...food.version, id: 'fv-new' } }],
      publish: publishOf({
        ...{ segmentId: dish.id, talkId: talk.id, lineId: line.id, foodId: 'f-new' },
      }),
    };
    const id = value(await importEpisodeFile(withFood, AT)).episodeId;
    const names = (file: EpisodeFile) => file.foods.map(({ name }) => name);
    expect(names(await read(id))).toContain('Pea drink, invented');
    expect(names(await read(id, false))).not.toContain('Pea drink, invented');
  });

  it('is no input of a lock', async () => {
    const [all, bare] = [await read(episodeId), await read(episodeId, false)];
    const { layout: _, ...creator } = bare.creator;
    expect(takeLock(all).sha256).toBe(takeLock({ ...bare, creator }).sha256);
  });

  it('names its rows with their revisions, so that a form can change them', async () => {
    const revisions = await readRevisions(episodeId);
    const { variants, replies, pieces } = await publishNow();
    for (const { id } of [...variants, ...replies, ...pieces]) expect(revisions[id]).toBe(1);
  });

  it('loses the steps of an ingredient with it, and a swap without steps, and both come back', async () => {
    const before = stableJson(await read(episodeId));
    const file = await read(episodeId);
    const lineId = file.episode.segments.find(({ title }) => title === dish.title)?.recipe?.lines[0]
      ?.id as string;
    const rev = (await readRevisions(episodeId))[lineId] as number;
    const group = await act(...(await removalEdits('RecipeLine', lineId, rev)));
    const after = await publishNow();
    expect(after.variants).toMatchObject([{ name: 'bigger day', steps: [{ kind: 'add' }] }]);
    expect(parseEpisodeData(await read(episodeId))).toMatchObject({ ok: true });
    value(await undo(group, BY));
    expect(stableJson(await read(episodeId))).toBe(before);
  });

  it('keeps a piece without dishes when its dishes go, instead of making it one of the day', async () => {
    const file = await read(episodeId);
    const segmentId = file.episode.segments.find(({ title }) => title === dish.title)?.id as string;
    const talkId = file.episode.segments.find(({ title }) => title === talk.title)?.id as string;
    const revisions = await readRevisions(episodeId);
    await act(...(await removalEdits('Segment', segmentId, revisions[segmentId] as number)));
    await act(...(await removalEdits('Segment', talkId, revisions[talkId] as number)));
    const { variants, replies, pieces } = await publishNow();
    expect(variants).toEqual([]);
    expect(replies).toMatchObject([{ segmentId: null, number: 712.5 }, { segmentId: null }]);
    expect(pieces).toMatchObject([{ segmentIds: [] }, { segmentIds: null }]);
  });

  it('refuses a step that is two things at once, or none', async () => {
    const { variants } = await publishNow();
    const variantId = variants[0]?.id as string;
    const lineId =
      variants[0]?.steps[0] && 'lineId' in variants[0].steps[0] ? variants[0].steps[0].lineId : '';
    for (const wrong of [
      { kind: 'amount' as const, lineId },
      { kind: 'leaveOut' as const, lineId, massMg: 5 },
      { kind: 'food' as const, lineId },
      { kind: 'add' as const, lineId, foodId: ownFood.id, massMg: 5, state: 'asIs' },
      { kind: 'add' as const, foodId: ownFood.id, massMg: 5 },
      { kind: 'add' as const, foodId: ownFood.id, massMg: 5, state: 'soggy' },
    ]) {
      const edits: Edit[] = [
        { op: 'create', entity: 'SwapStep', row: { id: uuid(), variantId, position: 9, ...wrong } },
      ];
      expect(await write({ ...BY, label: 'x', edits })).toMatchObject({
        ok: false,
        problems: [{ code: 'invalid' }],
      });
    }
  });

  it('follows a food that becomes part of another', async () => {
    const file = await read(episodeId);
    const from = file.foods.find(({ name }) => name === ownFood.name)?.id as string;
    const into = file.foods.find(({ kind, id }) => kind === 'reference' && id !== from)
      ?.id as string;
    await act(...mergeEdits(value(await readMerge(from, into))));
    const { variants } = await publishNow();
    const named = variants.flatMap(({ steps }) =>
      steps.flatMap((s) => ('foodId' in s ? s.foodId : [])),
    );
    expect(new Set(named)).toEqual(new Set([into]));
  });

  it('is told in words', async () => {
    const { variants, replies } = await publishNow();
    const revisions = await readRevisions(episodeId);
    const told = async (...edits: Edit[]) => {
      const groupId = await act(...edits);
      const { acts, names } = await readEpisodeChanges(episodeId);
      const { lines } = acts.find((each) => each.groupId === groupId) ?? { lines: [] };
      return actWords(lines, { names, region: 'US', zone: 'UTC' }).join(' | ');
    };
    const [variant] = variants;
    const [reply] = replies;
    if (!variant || !reply) throw new Error('nothing goes out');
    const rev = revisions[variant.id] as number;
    expect(
      await told({ op: 'update', entity: 'Variant', id: variant.id, rev, patch: { name: 'less' } }),
    ).toMatch(/saved swap.*bigger day.*less/i);
    const row = { id: uuid(), variantId: variant.id, position: 2, kind: 'leaveOut' as const };
    const lineId = 'lineId' in (variant.steps[0] ?? {}) ? variant.steps[0] : null;
    if (lineId?.kind !== 'amount') throw new Error('the first step is an amount');
    expect(
      await told({ op: 'create', entity: 'SwapStep', row: { ...row, lineId: lineId.lineId } }),
    ).toContain(`left out: ${line.text}`);
    expect(
      await told({
        ...{ op: 'update', entity: 'Reply', id: reply.id, rev: revisions[reply.id] as number },
        patch: { text: 'Weighed raw.' },
      }),
    ).toContain('Weighed raw.');
  });
});

describe('a file with what goes out', () => {
  const faults = (publish: object) =>
    parseEpisodeData({ ...WHOLE, publish: { ...WHOLE.publish, ...publish } });
  it('is refused where it names what is not there, with the path', () => {
    const variants = [
      { id: 'v', segmentId: dish.id, name: 'x', steps: [{ kind: 'leaveOut', lineId: 'none' }] },
    ];
    expect(faults({ variants })).toMatchObject({
      problems: [{ path: 'publish.variants[0].steps[0].lineId', code: 'unknown-id' }],
    });
    const pieces = [{ id: 'p', kind: 'clip', title: 'x', segmentIds: ['none'], limit: 100 }];
    expect(faults({ pieces })).toMatchObject({
      problems: [{ path: 'publish.pieces[0].segmentIds[0]', code: 'unknown-id' }],
    });
  });
});
