import { readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import { finishedReadings, lineReadings } from '#lib/figures/readings';
import { DEFAULT_KITCHEN } from '#lib/store/default-kitchen';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { readKeptTexts } from '#lib/store/keep-typed';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { readSeason } from '#lib/store/read-season';
import { UNTOUCHED, type FormState } from '../../app/_ui/form/form-state';
import { bringIn, newEpisode } from '../../app/actions';
import {
  addLine,
  addPoint,
  addSegment,
  answerDay,
  moveSegment,
  removeLine,
  saveEpisode,
  saveLine,
  savePoint,
  saveSegment,
  takeBack,
} from '../../app/episodes/[id]/actions';
import { addPortion } from '../../app/episodes/[id]/portion-actions';
import { weighDish, weighLine } from '../../app/episodes/[id]/weigh-actions';
import { fileName } from '../../app/episodes/[id]/export/file-name';
import { GET } from '../../app/episodes/[id]/export/route';
import { withFreshDatabase } from '../store/database';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

class Redirected extends Error {
  constructor(readonly href: string) {
    super(`redirected to ${href}`);
  }
}

type Action = (state: FormState, form: FormData) => Promise<FormState>;

/** Sends a form as a browser does; where it leads elsewhere, answers with the address. */
async function send(
  action: Action,
  texts: Readonly<Record<string, string | number | File>>,
): Promise<{ state: FormState | null; href: string }> {
  const form = new FormData();
  for (const [name, value] of Object.entries(texts)) {
    form.set(name, typeof value === 'number' ? String(value) : value);
  }
  try {
    return { state: await action(UNTOUCHED, form), href: '' };
  } catch (error) {
    if (error instanceof Redirected) return { state: null, href: error.href };
    throw error;
  }
}

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z');
  if (!file) throw new Error(`no episode ${episodeId}`);
  const revs = await readRevisions(episodeId);
  return { file, segments: file.episode.segments, rev: (id: string) => revs[id] ?? 0 };
}

/** The act that the page offers to undo. */
async function lastGroup(episodeId: string): Promise<string> {
  const { acts } = await readEpisodeChanges(episodeId);
  return acts[0]?.groupId ?? '';
}

async function begin(title: string): Promise<string> {
  const { href } = await send(newEpisode, { title, region: 'EU', publishOn: '2026-12-17' });
  return href.replace('/episodes/', '');
}

const LINE = { text: '80 g oats', quantity: '80', unit: 'g', foodId: '', state: '' };

describe('an episode by its forms', () => {
  withFreshDatabase();

  test('is begun with a name, and a name it must have', async () => {
    const refused = await send(newEpisode, { title: ' ', region: 'EU' });
    expect(refused.state?.problems).toMatchObject([{ path: 'title' }]);
    const id = await begin('A first one');
    const { file } = await read(id);
    expect(file.episode).toMatchObject({
      title: 'A first one',
      region: 'EU',
      publishOn: '2026-12-17',
    });
    expect((await readSeason()).rows.map((row) => row.id)).toContain(id);
  });

  test('takes dishes and talk in order, moved as asked', async () => {
    const episodeId = await begin('Order');
    for (const [title, kind] of [
      ['Hook', 'talk'],
      ['Skillet', 'recipe'],
      ['Pots', 'recipe'],
    ] as const) {
      await send(addSegment, {
        episodeId,
        title,
        kind,
        planned: '1:30',
        batches: '1',
      });
    }
    const titles = async () => (await read(episodeId)).segments.map((segment) => segment.title);
    expect(await titles()).toEqual(['Hook', 'Skillet', 'Pots']);
    const [hook, skillet, pots] = (await read(episodeId)).segments;
    expect(hook?.recipe).toBeNull();
    expect(skillet).toMatchObject({ plannedS: 90, eaten: { num: 1, den: 1 } });
    expect(hook).toMatchObject({ eaten: { num: 0, den: 1 } });
    await send(moveSegment, { episodeId, segmentId: pots?.id ?? '', to: 'up' });
    expect(await titles()).toEqual(['Hook', 'Pots', 'Skillet']);
    await send(moveSegment, { episodeId, segmentId: hook?.id ?? '', to: 'down' });
    expect(await titles()).toEqual(['Pots', 'Hook', 'Skillet']);
    const further = await send(moveSegment, { episodeId, segmentId: pots?.id ?? '', to: 'up' });
    expect(further.state?.problems).toHaveLength(1);
    expect(await titles()).toEqual(['Pots', 'Hook', 'Skillet']);
  });

  test('weighs an ingredient and the finished dish: readings add up, the container is taken off', async () => {
    const episodeId = await begin('Weighed');
    await send(addSegment, { episodeId, title: 'Oats', kind: 'recipe' });
    const recipe = async () => (await read(episodeId)).segments[0]?.recipe;
    const recipeId = (await recipe())?.id ?? '';
    await send(addLine, { ...LINE, episodeId, recipeId });
    const lineId = (await recipe())?.lines[0]?.id ?? '';
    const scaleId = DEFAULT_KITCHEN.scales[0]?.id ?? '';
    const on = { episodeId, scaleId, method: 'direct' };
    await send(weighLine, { ...on, lineId, gross: '252', tare: '200' });
    await send(weighLine, { ...on, lineId, gross: '30', tare: '' });
    await send(weighDish, { ...on, recipeId, gross: '500', tare: '100.5' });
    const weighings = (await recipe())?.weighings ?? [];
    expect(lineReadings({ weighings }, lineId).soFarMg).toBe(82_000);
    expect(finishedReadings({ weighings }).at(-1)?.netMg).toBe(399_500);
    const refused = await send(weighLine, { ...on, lineId, gross: '100', tare: '120' });
    expect(refused.state?.problems.map(({ path }) => path)).toEqual(['tare']);
    expect(refused.state?.typed.gross).toBe('100');
    expect((await recipe())?.weighings).toHaveLength(3);
  });

  test('keeps ingredients as typed, takes one out and back in', async () => {
    const episodeId = await begin('Ingredients');
    await send(addSegment, { episodeId, title: 'Oats', kind: 'recipe' });
    const recipeId = (await read(episodeId)).segments[0]?.recipe?.id ?? '';
    const lines = async () => (await read(episodeId)).segments[0]?.recipe?.lines ?? [];
    expect((await send(addLine, { ...LINE, episodeId, recipeId })).state?.done).not.toBe('');
    await send(addLine, {
      ...LINE,
      episodeId,
      recipeId,
      text: 'a handful of rocket',
      quantity: '',
      grams: '20 ± 7',
      leftBehind: '3',
    });
    const [oats, rocket] = await lines();
    expect(oats).toMatchObject({ text: '80 g oats', unit: 'g', state: 'raw', planned: null });
    expect(rocket).toMatchObject({
      quantity: null,
      unit: null,
      planned: { lowMg: 13_000, valueMg: 20_000, highMg: 27_000 },
      leftBehind: { kind: 'mass', valueMg: 3000 },
    });
    const { rev } = await read(episodeId);
    const lineId = oats?.id ?? '';
    const out = await send(removeLine, { episodeId, lineId, rev: rev(lineId) });
    expect((await lines()).map((line) => line.text)).toEqual(['a handful of rocket']);
    expect(out.href).toBe(`/episodes/${episodeId}`);
    const groupId = await lastGroup(episodeId);
    await send(takeBack, { episodeId, groupId });
    expect((await lines()).map((line) => line.text)).toEqual(['80 g oats', 'a handful of rocket']);
  });

  test('says what cannot be read at its field, and writes nothing', async () => {
    const episodeId = await begin('Refused');
    await send(addSegment, { episodeId, title: 'Oats', kind: 'recipe' });
    const recipeId = (await read(episodeId)).segments[0]?.recipe?.id ?? '';
    const { state } = await send(addLine, { ...LINE, episodeId, recipeId, quantity: 'some' });
    expect(state?.problems.map((problem) => problem.path)).toEqual(['quantity']);
    expect(state?.typed.text).toBe('80 g oats');
    expect((await read(episodeId)).segments[0]?.recipe?.lines).toEqual([]);
  });

  test('refuses a change to what was changed meanwhile, at the field and with what was typed', async () => {
    const episodeId = await begin('Conflict');
    const { rev } = await read(episodeId);
    const sent = { episodeId, rev: rev(episodeId), region: 'EU', hook: '', publishOn: '' };
    const first = await send(saveEpisode, { ...sent, title: 'Mine' });
    expect(first.href).toContain(episodeId);
    const second = await send(saveEpisode, { ...sent, title: 'Theirs' });
    expect(second.state?.problems).toMatchObject([{ path: '', code: 'conflict' }]);
    expect(second.state?.typed.title).toBe('Theirs');
    expect(second.state?.theirs?.title).toBe('Mine');
    expect((await read(episodeId)).file.episode.title).toBe('Mine');
    expect((await readKeptTexts(episodeId))?.texts.title).toBe('Theirs');
    // Sent again at the revision that was shown, it is meant, and nothing waits any more.
    const meant = { ...sent, rev: second.state?.rev ?? 0, title: 'Theirs' };
    expect((await send(saveEpisode, meant)).href).toContain(episodeId);
    expect((await read(episodeId)).file.episode.title).toBe('Theirs');
    expect(await readKeptTexts(episodeId)).toBeNull();
  });

  test('keeps segment, ingredient, portion, sentence and answer as changed', async () => {
    const episodeId = await begin('Changes');
    await send(addSegment, { episodeId, title: 'Oats', kind: 'recipe' });
    const segment = (await read(episodeId)).segments[0];
    const segmentId = segment?.id ?? '';
    const recipeId = segment?.recipe?.id ?? '';
    await send(addLine, { ...LINE, episodeId, recipeId });
    await send(addPoint, { episodeId, segmentId, text: '[energy, whole]' });
    await send(addPortion, { episodeId, recipeId, size: '2', kind: 'count', name: '' });
    await send(addPortion, { episodeId, recipeId, size: '180', kind: 'mass', name: 'a bowl' });
    const before = await read(episodeId);
    const line = before.segments[0]?.recipe?.lines[0];
    const point = before.segments[0]?.talkingPoints[0];
    await send(saveSegment, {
      episodeId,
      segmentId,
      rev: before.rev(segmentId),
      title: 'Porridge',
      planned: '3:25',
      batches: '2',
    });
    await send(saveLine, {
      ...LINE,
      episodeId,
      lineId: line?.id ?? '',
      rev: before.rev(line?.id ?? ''),
      quantity: '1 1/2',
      unit: 'cup',
      state: 'dry',
    });
    await send(savePoint, {
      episodeId,
      pointId: point?.id ?? '',
      rev: before.rev(point?.id ?? ''),
      text: 'Only [energy, each]',
    });
    const answer = { episodeId, rev: before.rev(episodeId), kind: 'notCounted', what: '' };
    expect((await send(answerDay, answer)).state?.problems[0]?.path).toBe('what');
    await send(answerDay, { ...answer, what: 'coffee' });
    const { file } = await read(episodeId);
    expect(file.episode.anythingElse).toEqual({ kind: 'notCounted', what: 'coffee' });
    expect(file.episode.segments[0]).toMatchObject({
      title: 'Porridge',
      plannedS: 205,
      batches: { num: 2, den: 1 },
      talkingPoints: [{ text: 'Only [energy, each]' }],
      recipe: {
        lines: [{ quantity: { low: { num: 3, den: 2 } }, unit: 'cup', state: 'dry' }],
        portions: [
          { kind: 'count', of: 2, name: 'one of 2' },
          { kind: 'mass', massMg: 180_000, name: 'a bowl' },
        ],
      },
    });
  });
});

describe('an episode file', () => {
  withFreshDatabase();
  const text = readFileSync(new URL('../../seed/demo.episode.json', import.meta.url), 'utf8');
  const upload = (content: string) => ({ file: new File([content], 'demo.episode.json') });

  test('comes in by its form and goes out again with the same dishes', async () => {
    const { href } = await send(bringIn, upload(text));
    const id = href.replace('/episodes/', '');
    const response = await GET(new Request('http://localhost'), {
      params: Promise.resolve({ id }),
    });
    expect(response.headers.get('content-disposition')).toMatch(
      /filename="[a-z0-9-]+\.episode\.json"/,
    );
    const out = parseEpisodeFile(await response.text());
    const demo = parseEpisodeFile(text);
    if (!out.ok || !demo.ok) throw new Error('both must be readable');
    const dishes = (file: typeof demo.value) =>
      file.episode.segments.map((segment) => [
        segment.title,
        segment.recipe?.lines.map((line) => [line.text, line.quantity, line.unit, line.planned]),
      ]);
    expect(dishes(out.value)).toEqual(dishes(demo.value));
  });

  test('with faults is refused with the place of each', async () => {
    const broken = JSON.parse(text) as { episode: { segments: { title: unknown }[] } };
    const [segment] = broken.episode.segments;
    if (!segment) throw new Error('the demo has segments');
    segment.title = 7;
    const { state } = await send(bringIn, upload(JSON.stringify(broken)));
    expect(state?.problems).toHaveLength(1);
    expect(state?.problems[0]?.path).toBe('file');
    expect(state?.problems[0]?.message).toContain('episode.segments[0].title');
  });

  test('that is none is refused in words', async () => {
    expect((await send(bringIn, {})).state?.problems[0]?.message).toContain('Choose');
    expect((await send(bringIn, upload('{'))).state?.problems[0]?.message).toContain('JSON');
  });

  test('that is not there is not found', async () => {
    const params = Promise.resolve({ id: 'nowhere' });
    expect((await GET(new Request('http://localhost'), { params })).status).toBe(404);
  });

  test.each([
    ['Harbour day, cooked on one tray', 'harbour-day-cooked-on-one-tray.episode.json'],
    ['Crème brûlée "à la" maison', 'creme-brulee-a-la-maison.episode.json'],
    ['…', 'episode.episode.json'],
  ])('%s is saved as %s', (title, name) => {
    expect(fileName(title)).toBe(name);
  });
});
