import { describe, expect, it } from 'vitest';
import { filmedAlone } from '#lib/episode/also-filmed';
import { episodeFileText, parseEpisodeData, parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { UNSAID_DAY_SEGMENT } from '#lib/episode/unsaid';
import { takeLock } from '#lib/lock/numbers-lock';
import { dayFacts } from '#lib/shoot/day-facts';
import { toProblem } from '#lib/shoot/to-problem';
import type { Edit } from '#lib/store/command';
import { database } from '#lib/store/client';
import { keepDayEvents } from '#lib/store/day-events';
import { importEpisodeFile } from '#lib/store/import-file';
import { isDayOf, readDayEvents } from '#lib/store/read-day-events';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { removalEdits } from '#lib/store/remove-rows';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { randomDay } from '../shoot/random-day';
import { asTwo, SECOND } from '../shoot/several-episodes';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';
import { upToIds } from './up-to-ids';

withFreshDatabase();

async function imported(file: EpisodeFile): Promise<string> {
  const result = await importEpisodeFile(file, AT);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value.episodeId;
}

async function read(id: string, dayId?: string): Promise<EpisodeFile> {
  const file = await readEpisodeFile(id, FILE.savedAt, { dayId });
  if (!file) throw new Error('The episode is not there');
  return file;
}

async function act(edits: readonly Edit[]): Promise<string> {
  const written = await write({ actor: 'test', label: 'A change', at: AT, edits });
  if (!written.ok) throw new Error(JSON.stringify(written.problems));
  return written.value.groupId;
}

/** Two imports of the same file, and the dishes of the second put onto the day of the first. */
async function together() {
  const [first, second] = [await imported(FILE), await imported(FILE)];
  const before = await read(first);
  const theirs = await read(second);
  const dayId = before.day?.id ?? '';
  const added = theirs.episode.segments.map(({ id }, at) => ({ id, position: 100 + at }));
  const group = await act([
    {
      op: 'create',
      entity: 'DayEpisode',
      row: { id: `de-${second}`, dayId, episodeId: second },
    },
    ...added.map(({ id, position }): Edit => ({
      op: 'create',
      entity: 'DaySegment',
      row: { ...UNSAID_DAY_SEGMENT, id: `ds-${id}`, dayId, segmentId: id, position },
    })),
  ]);
  return { first, second, before, theirs, dayId, group };
}

describe('an episode file with another episode on its day', () => {
  it('is brought in as two episodes of one day, and reads back as it was, up to ids', async () => {
    const file = asTwo(randomDay(3));
    const id = await imported(file);
    const back = await read(id);
    expect(upToIds(back)).toEqual(upToIds({ ...file, savedAt: FILE.savedAt }));
    expect(parseEpisodeFile(episodeFileText(back))).toEqual({ ok: true, value: back });
    const otherId = back.also?.[0]?.id ?? '';
    const other = await read(otherId, back.day?.id);
    expect(other.episode.title).toBe(SECOND.title);
    expect(other.also?.map(({ title }) => title)).toEqual([file.episode.title]);
    expect(other.episode.segments).toEqual(back.also?.[0]?.segments);
    const problems = [back, other].map((one) => toProblem(dayFacts(one), new Map()));
    expect(problems[0]).toEqual(problems[1]);
  });

  it('carries the foods that its dishes need and the other lacks, and is a valid file of either', async () => {
    const small = structuredClone(FILE);
    const [dish] = small.episode.segments.filter(({ recipe }) => recipe !== null);
    small.episode.segments = small.episode.segments.filter(({ recipe }) => recipe === null);
    Object.assign(small, { recipes: [], stock: [], packs: [], foods: [], said: [], pantry: [] });
    Object.assign(small.episode, { targets: [], links: [], title: 'Talk alone' });
    const talk = new Set(small.episode.segments.map(({ id }) => id));
    if (small.day) {
      small.day.segments = small.day.segments.filter(({ segmentId }) => talk.has(segmentId));
      small.day.pins = [];
    }
    const [first, second] = [await imported(small), await imported(FILE)];
    const [own, theirs] = [await read(first), await read(second)];
    const dayId = own.day?.id ?? '';
    const cooked = theirs.episode.segments.find(({ title }) => title === dish?.title);
    await act([
      { op: 'create', entity: 'DayEpisode', row: { id: 'de-cook', dayId, episodeId: second } },
      {
        op: 'create',
        entity: 'DaySegment',
        row: {
          ...{ ...UNSAID_DAY_SEGMENT, id: 'ds-cook', dayId, position: 9 },
          segmentId: cooked?.id ?? '',
        },
      },
    ]);
    for (const file of [await read(first, dayId), await read(second, dayId)]) {
      expect(parseEpisodeData(JSON.parse(episodeFileText(file)))).toMatchObject({ ok: true });
    }
    const file = await read(first, dayId);
    expect(file.foods).toEqual([]);
    const used = new Set(cooked?.recipe?.lines.flatMap(({ foodId }) => foodId ?? []));
    expect(file.also?.[0]?.foods.map(({ id }) => id)).toEqual(expect.arrayContaining([...used]));
    expect(upToIds(await read(await imported(file)))).toEqual(upToIds(file));
  });
});

describe('two episodes of the store on one day', () => {
  it('leave each other’s numbers and locks as they are, byte for byte', async () => {
    const { first, second, before, theirs, dayId } = await together();
    const [own, other] = [await read(first, dayId), await read(second)];
    expect(own.also).toHaveLength(1);
    expect(takeLock(own)).toEqual(takeLock(before));
    expect(filmedAlone(own)).toEqual(before);
    expect(takeLock(other).inputsSha256).toBe(takeLock(theirs).inputsSha256);
  });

  it('are seen from both: each has the day, its segments in one order, and its log', async () => {
    const { first, second, dayId } = await together();
    const [own, other] = [await read(first, dayId), await read(second, dayId)];
    expect(own.day).toEqual(other.day);
    expect(await isDayOf(first, dayId)).toBe(true);
    expect(await isDayOf(second, dayId)).toBe(true);
    const steps = other.episode.segments.flatMap((segment) => segment.steps);
    const made = { deviceId: `phone-${dayId}`, at: AT.toISOString(), kind: 'done' as const };
    const kept = await keepDayEvents(
      dayId,
      [
        {
          ...made,
          id: `e-${dayId}`,
          deviceSeq: 1,
          refs: { stepId: steps[0]?.id ?? '' },
          payload: {},
        },
      ],
      AT,
    );
    expect(kept).toMatchObject({ kept: [`e-${dayId}`], unknownSteps: [] });
    expect((await readDayEvents(dayId)).events.map(({ id }) => id)).toContain(`e-${dayId}`);
  });

  it('are told apart by their revisions: a step of the other can be changed after the day', async () => {
    const { first, second, dayId } = await together();
    const other = await read(second);
    const step = other.episode.segments.flatMap(({ steps }) => steps)[0];
    const revs = await readRevisions(first, undefined, dayId);
    expect(revs[step?.id ?? '']).toBe(1);
    expect(revs[`de-${second}`]).toBe(1);
  });

  it('part again when the other is removed, and meet again when that is undone', async () => {
    const { first, second, dayId, before } = await together();
    const row = await database().episode.findUniqueOrThrow({ where: { id: second } });
    const group = await act(await removalEdits('Episode', second, row.rev));
    expect(await read(first, dayId)).toEqual(before);
    const back = await undo(group, { at: AT, actor: 'test' });
    expect(back.ok).toBe(true);
    expect((await read(first, dayId)).also).toHaveLength(1);
  });

  it('refuse what belongs nowhere: an episode that was removed, a day that is gone', async () => {
    const { second, dayId, theirs } = await together();
    const row = await database().episode.findUniqueOrThrow({ where: { id: second } });
    await act(await removalEdits('Episode', second, row.rev));
    const segmentId = theirs.episode.segments[0]?.id ?? '';
    const place = { ...UNSAID_DAY_SEGMENT, id: `again-${dayId}`, dayId, segmentId, position: 0 };
    const written = await write({
      ...{ actor: 'test', label: 'A change', at: AT },
      edits: [{ op: 'create', entity: 'DaySegment', row: place }],
    });
    expect(written).toMatchObject({ ok: false, problems: [{ code: 'gone' }] });
  });
});

describe('an episode of several days', () => {
  it('shows the next of them, after the last the last, the first where asked, and none that is not its own', async () => {
    const id = await imported(FILE);
    const day = await database().filmingDay.findFirstOrThrow({
      where: { episodes: { some: { episodeId: id } } },
    });
    const { creatorId: _, rev: __, deletedAt: ___, ...columns } = day;
    for (const date of ['2026-05-09', '2026-05-16']) {
      const dayId = `${id}-${date}`;
      await act([
        { op: 'create', entity: 'FilmingDay', row: { ...columns, id: dayId, date } as never },
        { op: 'create', entity: 'DayEpisode', row: { id: `de-${dayId}`, dayId, episodeId: id } },
      ]);
    }
    const dateAt = async (savedAt: string, options = {}) =>
      (await readEpisodeFile(id, savedAt, options))?.day?.date ?? null;
    expect(await dateAt('2026-05-01T08:00:00Z')).toBe('2026-05-02');
    expect(await dateAt('2026-05-03T08:00:00Z')).toBe('2026-05-09');
    expect(await dateAt('2026-05-09T08:00:00Z')).toBe('2026-05-09');
    expect(await dateAt('2026-06-01T08:00:00Z')).toBe('2026-05-16');
    expect(await dateAt('2026-06-01T08:00:00Z', { day: 'first' })).toBe('2026-05-02');
    expect(await dateAt('2026-06-01T08:00:00Z', { dayId: 'elsewhere' })).toBeNull();
  });
});
