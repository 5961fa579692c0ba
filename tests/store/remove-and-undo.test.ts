import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { stableJson } from '#lib/episode/stable-json';
import type { Result } from '#lib/result';
import { database } from '#lib/store/client';
import type { Edit, Written } from '#lib/store/command';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { removalEdits } from '#lib/store/remove-rows';
import type { EntityName } from '#lib/store/rows';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { randomDay } from '../shoot/random-day';
import { demoFile } from '../ui/page-support';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';

withFreshDatabase();

const BY = { actor: 'me', at: AT };
const act = (label: string, edits: readonly Edit[]) => write({ ...BY, label, edits });

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

async function brought(file: EpisodeFile): Promise<string> {
  return value(await importEpisodeFile(file, AT)).episodeId;
}

async function fileOf(episodeId: string): Promise<EpisodeFile> {
  const file = await readEpisodeFile(episodeId, AT.toISOString());
  if (!file) throw new Error(`no episode ${episodeId}`);
  return file;
}

/** Takes a row out with what hangs on it. */
async function takeOut(episodeId: string, entity: EntityName, id: string): Promise<Written> {
  const rev = (await readRevisions(episodeId))[id] ?? 0;
  return value(await act(`Take out ${entity}`, await removalEdits(entity, id, rev)));
}

/** Rows of an episode that are alive and name one that is not. */
async function danglers(): Promise<number> {
  const db = database();
  const ALIVE = { deletedAt: null };
  const GONE = { deletedAt: { not: null } };
  const ends = [{ from: GONE }, { to: GONE }];
  const counts = await Promise.all([
    db.stepLink.count({ where: { ...ALIVE, OR: ends } }),
    db.perishableSpan.count({ where: { ...ALIVE, OR: [...ends, { perishable: GONE }] } }),
    db.pin.count({ where: { ...ALIVE, step: GONE } }),
    db.shot.count({ where: { ...ALIVE, OR: [{ step: GONE }, { segment: GONE }] } }),
    db.step.count({ where: { ...ALIVE, segment: GONE } }),
    db.perishable.count({ where: { ...ALIVE, segment: GONE } }),
    db.talkingPoint.count({ where: { ...ALIVE, segment: GONE } }),
    db.target.count({ where: { ...ALIVE, segment: GONE } }),
    db.readingMend.count({ where: { ...ALIVE, OR: [{ segment: GONE }, { portion: GONE }] } }),
    db.daySegment.count({ where: { ...ALIVE, segment: GONE } }),
    db.recipeLine.count({ where: { ...ALIVE, recipe: GONE } }),
    db.portion.count({ where: { ...ALIVE, recipe: GONE } }),
    db.weighing.count({ where: { ...ALIVE, recipe: GONE } }),
    db.weighingShare.count({ where: { ...ALIVE, OR: [{ weighing: GONE }, { line: GONE }] } }),
  ]);
  return counts.reduce((sum, count) => sum + count, 0);
}

interface Part {
  readonly entity: EntityName;
  readonly id: string;
}

/** Everything in an episode that a person can take out. */
function partsOf({ episode }: EpisodeFile): Part[] {
  const of = (entity: EntityName, rows: readonly { readonly id: string }[]) =>
    rows.map(({ id }): Part => ({ entity, id }));
  return [
    ...of('Segment', episode.segments),
    ...of('Target', episode.targets),
    ...of('StepLink', episode.links),
    ...episode.segments.flatMap((segment) => [
      ...of('Step', segment.steps),
      ...of('Shot', segment.shots),
      ...of('Perishable', segment.perishables),
      ...of('TalkingPoint', segment.talkingPoints),
      ...of('RecipeLine', segment.recipe?.lines ?? []),
      ...of('Portion', segment.recipe?.portions ?? []),
      ...of('Weighing', segment.recipe?.weighings ?? []),
    ]),
  ];
}

async function expectThereAndBack(episodeId: string, part: Part): Promise<void> {
  const before = stableJson(await fileOf(episodeId));
  const { groupId } = await takeOut(episodeId, part.entity, part.id);
  const without = stableJson(await fileOf(episodeId));
  expect(without).not.toBe(before);
  expect(without).not.toContain(part.id);
  expect(await danglers()).toBe(0);
  value(await undo(groupId, BY));
  expect(stableJson(await fileOf(episodeId)), `${part.entity} ${part.id}`).toBe(before);
}

describe('taken out and brought back', () => {
  it.each([
    ['a file that uses every field', FILE],
    ['the demo', demoFile()],
  ])(
    'every part of %s leaves the file as it was',
    async (_, file) => {
      const episodeId = await brought(file);
      const parts = partsOf(await fileOf(episodeId));
      expect(new Set(parts.map(({ entity }) => entity)).size).toBeGreaterThanOrEqual(9);
      // Every dish and talk, and of the rest each kind's first and last.
      const some = parts.filter(({ entity }, index) => {
        const kin = parts.filter((other) => other.entity === entity);
        return entity === 'Segment' || kin[0] === parts[index] || kin.at(-1) === parts[index];
      });
      for (const part of some) await expectThereAndBack(episodeId, part);
    },
    240_000,
  );

  it.each(Array.from({ length: 5 }, (_, seed) => seed + 1))(
    'a random day’s segments and steps leave the file as it was (seed %i)',
    async (seed) => {
      const episodeId = await brought(randomDay(seed));
      const { segments } = (await fileOf(episodeId)).episode;
      const steps = segments.flatMap((segment) => segment.steps);
      for (const { id } of segments) {
        await expectThereAndBack(episodeId, { entity: 'Segment', id });
      }
      for (const { id } of steps.filter((_, index) => index % 4 === seed % 4)) {
        await expectThereAndBack(episodeId, { entity: 'Step', id });
      }
    },
  );

  it('several taken out one after the other come back in the reverse order', async () => {
    const episodeId = await brought(demoFile());
    const before = stableJson(await fileOf(episodeId));
    const groups: string[] = [];
    for (const { id } of (await fileOf(episodeId)).episode.segments) {
      groups.push((await takeOut(episodeId, 'Segment', id)).groupId);
    }
    expect((await fileOf(episodeId)).episode.segments).toEqual([]);
    for (const groupId of groups.reverse()) value(await undo(groupId, BY));
    expect(stableJson(await fileOf(episodeId))).toBe(before);
  });

  it('a dish takes everything with it in one act', async () => {
    const episodeId = await brought(demoFile());
    const dish = (await fileOf(episodeId)).episode.segments.find(({ recipe }) => recipe !== null);
    const { groupId } = await takeOut(episodeId, 'Segment', dish?.id ?? '');
    const lines = await database().change.findMany({ where: { groupId } });
    const entities = new Set(lines.map(({ entity }) => entity));
    expect([...entities]).toEqual(
      expect.arrayContaining(['Segment', 'Recipe', 'RecipeLine', 'Step', 'TalkingPoint']),
    );
    expect(lines.filter(({ entity }) => entity === 'RecipeLine')).toHaveLength(
      dish?.recipe?.lines.length ?? -1,
    );
  });

  it('a recipe that another segment has stays', async () => {
    const episodeId = await brought(demoFile());
    const dish = (await fileOf(episodeId)).episode.segments.find(({ recipe }) => recipe !== null);
    const row = await database().segment.findUniqueOrThrow({ where: { id: dish?.id ?? '' } });
    const { creatorId: _c, rev: _r, deletedAt: _d, ...columns } = row;
    const twin = { ...columns, id: 'twin', position: 99 } as never;
    value(await act('Twin', [{ op: 'create', entity: 'Segment', row: twin }]));
    await takeOut(episodeId, 'Segment', dish?.id ?? '');
    const left = (await fileOf(episodeId)).episode.segments.find(({ id }) => id === 'twin');
    expect(left?.recipe?.lines).toHaveLength(dish?.recipe?.lines.length ?? -1);
  });
});
