import { renderToStaticMarkup } from 'react-dom/server';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { stepAt, USUAL_HOUSE_SHOTS } from '#lib/shoot/house-shots';
import { planDay } from '#lib/shoot/plan-day';
import { daySheet } from '#lib/shoot/day-sheet';
import { importEpisodeFile } from '#lib/store/import-file';
import { readChanges } from '#lib/store/read-changes';
import { readEpisodeFile } from '#lib/store/read-episode';
import { undo } from '#lib/store/undo';
import { UsualShots, UsualShotsOfAll } from '../../app/episodes/[id]/day/_components/usual-shots';
import type { DayPage } from '../../app/episodes/[id]/day/_components/view';
import { addHouseShots } from '../../app/episodes/[id]/day/house-shot-actions';
import { AT, withFreshDatabase } from '../store/database';
import { demoFile, send, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', async () => {
  const support = await import('./page-support');
  return {
    redirect: (href: string) => {
      throw new support.Redirected(href);
    },
  };
});

const demo = demoFile();
const houseShots = USUAL_HOUSE_SHOTS.map((shot, at) => ({ ...shot, id: `house-${at}` }));

withFreshDatabase();
let episodeId = '';
beforeAll(async () => {
  const done = await importEpisodeFile({ ...demo, kitchen: { ...demo.kitchen, houseShots } }, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  episodeId = done.value.episodeId;
});

async function read() {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z');
  if (!file) throw new Error('the demo must be there');
  const dishes = file.episode.segments.filter(({ kind }) => kind === 'recipe');
  const counts = dishes.map(({ shots }) => shots.length);
  const [dish] = dishes;
  if (!dish) throw new Error('the demo has a dish');
  return { file, dish, counts };
}

function pageOf(file: EpisodeFile): DayPage {
  if (!file.day) throw new Error('the demo has a day');
  const plan = planDay(file, { seed: 1 });
  const none = {
    likely: null,
    spans: [],
    revs: {},
    editing: null,
    tried: null,
    at: null,
    searching: false,
    days: [],
    adding: null,
  };
  return { file, day: file.day, plan, sheet: daySheet(file, plan), ...none };
}

async function takeBackTheLast() {
  const [last] = await readChanges({ take: 1 });
  expect((await undo(last?.groupId ?? '', { actor: 'local', at: AT })).ok).toBe(true);
}

describe('the shots of every dish, applied', () => {
  test('one press adds what a dish lacks, each at its step; taken back in one act', async () => {
    const { dish, counts } = await read();
    const sent = await send(addHouseShots, { episodeId, segmentId: dish.id });
    expect(sent.href).toContain(`at=new-shot-${dish.id}`);
    const after = await read();
    const added = after.dish.shots.slice(dish.shots.length);
    expect(added.map(({ title }) => title)).toEqual(USUAL_HOUSE_SHOTS.map(({ title }) => title));
    for (const [at, { moment }] of USUAL_HOUSE_SHOTS.entries()) {
      expect(added[at]?.stepId).toBe(stepAt(moment, dish.steps));
    }
    expect(after.counts.slice(1)).toEqual(counts.slice(1));
    const again = await send(addHouseShots, { episodeId, segmentId: dish.id });
    expect(again.state.done).toContain('there already');
    await takeBackTheLast();
    expect((await read()).counts).toEqual(counts);
  });

  test('all dishes at once, in one act; talk gets none', async () => {
    const { counts, file } = await read();
    const talk = file.episode.segments.filter(({ kind }) => kind === 'talk');
    await send(addHouseShots, { episodeId });
    const after = await read();
    expect(after.counts).toEqual(counts.map((count) => count + USUAL_HOUSE_SHOTS.length));
    const now = after.file.episode.segments.filter(({ kind }) => kind === 'talk');
    expect(now.map(({ shots }) => shots.length)).toEqual(talk.map(({ shots }) => shots.length));
    const page = pageOf(after.file);
    expect(renderToStaticMarkup(<UsualShotsOfAll page={page} />)).toBe('');
    await takeBackTheLast();
    expect((await read()).counts).toEqual(counts);
  });

  test('a dish that is not there is told', async () => {
    const gone = await send(addHouseShots, { episodeId, segmentId: 'nowhere' });
    expect(gone.state.problems).toMatchObject([{ code: 'gone' }]);
  });

  test('the offer says how many and which; none without steps, and none in a kitchen without a list', async () => {
    const { file, dish } = await read();
    const page = pageOf(file);
    const offer = words(renderToStaticMarkup(<UsualShots page={page} segment={dish} />));
    expect(offer).toContain(`Add your usual shots: ${USUAL_HOUSE_SHOTS.length}`);
    for (const { title } of USUAL_HOUSE_SHOTS) expect(offer).toContain(title);
    const none = renderToStaticMarkup(<UsualShots page={page} segment={{ ...dish, steps: [] }} />);
    expect(none).toBe('');
    const bare = { ...page, file: { ...file, kitchen: { ...file.kitchen, houseShots: [] } } };
    expect(renderToStaticMarkup(<UsualShots page={bare} segment={dish} />)).toBe('');
    expect(words(renderToStaticMarkup(<UsualShotsOfAll page={page} />))).toMatch(/all \d dishes/);
    expect(words(renderToStaticMarkup(<UsualShotsOfAll page={bare} />))).toContain(
      'in the kitchen',
    );
    const segments = file.episode.segments.filter(
      ({ id, kind }) => kind === 'talk' || id === dish.id,
    );
    const single = { ...page, file: { ...file, episode: { ...file.episode, segments } } };
    expect(words(renderToStaticMarkup(<UsualShotsOfAll page={single} />))).toContain(
      `Add your usual shots to ${dish.title}`,
    );
  });
});
