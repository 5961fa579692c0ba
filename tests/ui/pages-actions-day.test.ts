import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { Segment } from '#lib/episode/schema';
import { planDay } from '#lib/shoot/plan-day';
import { importEpisodeFile } from '#lib/store/import-file';
import { readChanges } from '#lib/store/read-changes';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { undo } from '#lib/store/undo';
import { addLink, addShot, addStep, removeStep } from '../../app/episodes/[id]/day/actions';
import {
  addLot,
  addSpan,
  removeLot,
  removeSpan,
  saveLot,
  saveSpan,
} from '../../app/episodes/[id]/day/lot-actions';
import { readSpans, readTied } from '#lib/store/read-step-ties';
import {
  addAppointment,
  addPin,
  removeAppointment,
  pinStep,
  removePin,
  saveAppointment,
  savePin,
} from '../../app/episodes/[id]/day/times-actions';
import { withFreshDatabase, AT } from '../store/database';
import { demoFile, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', async () => {
  const support = await import('./page-support');
  return {
    redirect: (href: string) => {
      throw new support.Redirected(href);
    },
  };
});

const NOW = '2026-12-10T08:00:00.000Z';
const SKILLET = 'Barley skillet';

withFreshDatabase();
let episodeId = '';
beforeAll(async () => {
  const done = await importEpisodeFile(demoFile(), AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  episodeId = done.value.episodeId;
});

async function read() {
  const file = await readEpisodeFile(episodeId, NOW);
  if (!file?.day) throw new Error('the demo has a day');
  const revs = await readRevisions(episodeId);
  const segment = file.episode.segments.find(({ title }) => title === SKILLET);
  if (!segment) throw new Error('the demo has a skillet');
  const plan = planDay(file, { seed: 1 });
  return { file, day: file.day, segment, plan, rev: (id: string) => revs[id] ?? 0 };
}

function stepAt(segment: Segment, index: number) {
  const step = segment.steps.at(index);
  if (!step) throw new Error(`no step ${index}`);
  return step;
}

describe('cold food by its forms', () => {
  const LOT = { name: 'Eggs for the skillet', limit: '120' };
  const find = async () => {
    const now = await read();
    const lot = now.segment.perishables.find(({ name }) => name.startsWith('Eggs'));
    const spans = (await readSpans(episodeId)).filter((span) => span.perishableId === lot?.id);
    return { ...now, lot, lotId: lot?.id ?? '', spans };
  };

  test('a lot is added, asked when it stands out, and stands in the plan with its limit', async () => {
    const { segment } = await read();
    const added = await send(addLot, { episodeId, segmentId: segment.id, ...LOT });
    const { lotId, lot } = await find();
    expect(added.href).toContain(`edit=new-span-${lotId}`);
    expect(lot).toMatchObject({ limitS: 7200, thrownAway: false, spans: [] });
    const [from, to] = [stepAt(segment, 0), stepAt(segment, -1)];
    const span = { fromStepId: from.id, fromAnchor: 'start', toStepId: to.id, toAnchor: 'end' };
    const said = await send(addSpan, { episodeId, lotId, ...span });
    expect(said.href).toContain(`at=${lotId}#row-${lotId}`);
    const { plan, lot: whole } = await find();
    expect(whole?.spans).toEqual([span]);
    const at = (stepId: string) => plan.entries.find((entry) => entry.stepId === stepId);
    const clock = plan.lots.find(({ perishableId }) => perishableId === lotId);
    const minutes = (at(to.id)?.endMin ?? 0) - (at(from.id)?.startMin ?? 0);
    expect(minutes).toBeGreaterThan(0);
    expect(clock).toMatchObject({ name: LOT.name, limitMin: 120, minutes });
  });

  test('what cannot be is refused at its field, with what was typed kept', async () => {
    const { segment, lotId } = await find();
    const sent = { episodeId, segmentId: segment.id, name: ' ', limit: 'two hours' };
    const refused = await send(addLot, sent);
    expect(refused.state.problems.map(({ path }) => path)).toEqual(['name', 'limit']);
    expect(refused.state.typed).toMatchObject({ limit: 'two hours' });
    const step = stepAt(segment, 0).id;
    const none = { fromStepId: step, fromAnchor: 'end', toStepId: step, toAnchor: 'start' };
    const empty = await send(addSpan, { episodeId, lotId, ...none });
    expect(empty.state.problems).toMatchObject([{ path: 'toAnchor' }]);
    const gone = await send(addSpan, { episodeId, lotId, ...none, toStepId: 'nowhere' });
    expect(gone.state.problems).toMatchObject([{ path: 'toStepId', code: 'gone' }]);
    const noLot = await send(addSpan, { episodeId, lotId: 'x', ...none, toAnchor: 'end' });
    expect(noLot.state.problems).toHaveLength(1);
    expect((await find()).spans).toHaveLength(1);
  });

  test('a lot and its stretch are changed; a stale tab is told', async () => {
    const { lotId, rev, spans, segment } = await find();
    const change = { episodeId, segmentId: segment.id, lotId, rev: rev(lotId), limit: '60' };
    await send(saveLot, { ...change, name: 'Eggs, beaten' });
    const stale = await send(saveLot, { ...change, name: 'Eggs, other tab' });
    expect(stale.state.problems.map(({ code }) => code)).toContain('conflict');
    expect(stale.state.typed.name).toBe('Eggs, other tab');
    const span = spans[0];
    if (!span) throw new Error('no stretch');
    const { id, rev: spanRev, fromStepId, fromAnchor, toStepId } = span;
    const to = { fromStepId, fromAnchor, toStepId, toAnchor: 'start' };
    const saved = await send(saveSpan, { episodeId, spanId: id, rev: spanRev, ...to });
    expect(saved.href).toContain(`at=${id}`);
    const after = await find();
    expect(after.lot).toMatchObject({ name: 'Eggs, beaten', limitS: 3600, spans: [to] });
    const again = await send(saveSpan, { episodeId, spanId: id, rev: spanRev, ...to });
    expect(again.state.problems.map(({ code }) => code)).toContain('conflict');
  });

  test('for the picture only it has no clock', async () => {
    const { lotId, rev, segment } = await find();
    const sent = { episodeId, segmentId: segment.id, lotId, rev: rev(lotId), ...LOT };
    await send(saveLot, { ...sent, thrownAway: 'on' });
    const { lot, plan } = await find();
    expect(lot?.thrownAway).toBe(true);
    expect(plan.lots.some(({ perishableId }) => perishableId === lotId)).toBe(false);
  });

  test('a stretch goes alone, a lot with its stretches', async () => {
    const { lotId, spans, segment } = await find();
    const [span] = spans;
    if (!span) throw new Error('no stretch');
    const { id, rev: _, ...ends } = span;
    await send(removeSpan, { episodeId, lotId, spanId: id, rev: span.rev });
    expect((await find()).spans).toEqual([]);
    const { fromStepId, fromAnchor, toStepId, toAnchor } = ends;
    await send(addSpan, { episodeId, lotId, fromStepId, fromAnchor, toStepId, toAnchor });
    const { rev } = await find();
    await send(removeLot, { episodeId, segmentId: segment.id, lotId, rev: rev(lotId) });
    expect((await find()).lot).toBeUndefined();
    expect((await readTied(fromStepId)).spans).toEqual([]);
  });
});

describe('appointments by their forms', () => {
  const CALL = { title: 'Call with the grower', start: '9:30', end: '10.15', hands: 'on' };
  const find = async () => {
    const now = await read();
    const call = now.day.appointments.find(({ title }) => title.startsWith('Call'));
    return { ...now, call, appointmentId: call?.id ?? '' };
  };

  test('the plan leaves its time free of whatever takes the hands', async () => {
    const { day, plan: before } = await read();
    const handed = (plan: typeof before) =>
      plan.entries.filter((entry) => entry.hands && entry.kind !== 'appointment');
    const within = handed(before).filter(({ startMin, endMin }) => startMin < 615 && endMin > 570);
    expect(within.length).toBeGreaterThan(0);
    await send(addAppointment, { episodeId, dayId: day.id, ...CALL });
    const { call, plan } = await find();
    expect(call).toMatchObject({ startMin: 570, endMin: 615, hands: true });
    const over = handed(plan).filter(({ startMin, endMin }) => startMin < 615 && endMin > 570);
    expect(over).toEqual([]);
    expect(plan.entries.find(({ title }) => title === CALL.title)).toMatchObject({
      kind: 'appointment',
      startMin: 570,
    });
  });

  test('an end before the start is refused; a change and a conflict are told', async () => {
    const { day, appointmentId, rev } = await find();
    const sent = { episodeId, dayId: day.id, appointmentId, rev: rev(appointmentId), ...CALL };
    const early = await send(saveAppointment, { ...sent, end: '9:00' });
    expect(early.state.problems).toMatchObject([{ path: 'end' }]);
    expect(early.state.typed).toMatchObject({ end: '9:00', hands: 'on' });
    const none = await send(addAppointment, { episodeId, dayId: day.id, ...CALL, start: 'noon' });
    expect(none.state.problems.map(({ path }) => path)).toContain('start');
    const { hands: _, ...free } = sent;
    await send(saveAppointment, { ...free, end: '24:30' });
    expect((await find()).call).toMatchObject({ endMin: 1470, hands: false });
    const stale = await send(saveAppointment, { ...sent, title: 'Call, other tab' });
    expect(stale.state.problems.map(({ code }) => code)).toContain('conflict');
    expect(stale.state.problems.some(({ path }) => path === 'end')).toBe(true);
  });

  test('it is taken out again; one for a day that is not there is refused', async () => {
    const { day, appointmentId, rev } = await find();
    const ids = { episodeId, dayId: day.id, appointmentId, rev: rev(appointmentId) };
    await send(removeAppointment, ids);
    expect((await find()).call).toBeUndefined();
    const gone = await send(addAppointment, { episodeId, dayId: 'nowhere', ...CALL });
    expect(gone.state.problems).toMatchObject([{ code: 'gone' }]);
  });
});

describe('steps that wait for a clock time', () => {
  test('a pin holds its step back, is changed and is taken out', async () => {
    const { day, segment, plan } = await read();
    const stepId = stepAt(segment, 0).id;
    const startOf = (given: typeof plan) =>
      given.entries.find((entry) => entry.stepId === stepId)?.startMin ?? -1;
    expect(startOf(plan)).toBeLessThan(690);
    const sent = { episodeId, dayId: day.id, stepId, when: 'notBefore' };
    const wrong = await send(addPin, { ...sent, at: '49:00' });
    expect(wrong.state.problems).toMatchObject([{ path: 'at' }]);
    expect(wrong.state.typed.at).toBe('49:00');
    await send(addPin, { ...sent, at: '11:30' });
    const pinned = await read();
    expect(startOf(pinned.plan)).toBeGreaterThanOrEqual(690);
    const twice = await send(addPin, { ...sent, at: '12:00' });
    expect(twice.state.problems).toMatchObject([{ path: 'stepId', code: 'exists-already' }]);

    const pinId = pinned.day.pins.find((pin) => pin.stepId === stepId)?.id ?? '';
    const form = { episodeId, pinId, rev: pinned.rev(pinId), stepId };
    const change = { ...form, when: 'at', at: '12:15' };
    await send(savePin, change);
    expect(startOf((await read()).plan)).toBe(735);
    const stale = await send(savePin, { ...change, at: '8:00' });
    expect(stale.state.problems).toMatchObject([{ path: 'at', code: 'conflict' }]);

    const ids = { episodeId, segmentId: segment.id, pinId };
    await send(removePin, { ...ids, rev: (await read()).rev(pinId) });
    const free = await read();
    expect(free.day.pins.some((pin) => pin.stepId === stepId)).toBe(false);
    expect(startOf(free.plan)).toBe(startOf(plan));
  });
});

test('a step is tied to a time by hand, in place of the time that it had', async () => {
  const { day, segment } = await read();
  const sent = { episodeId, dayId: day.id, stepId: stepAt(segment, 0).id };
  const pinsOf = async () => (await read()).day.pins.filter(({ stepId }) => stepId === sent.stepId);
  await send(pinStep, { ...sent, when: 'notBefore', min: '690' });
  await send(pinStep, { ...sent, when: 'at', min: '700' });
  expect(await pinsOf()).toMatchObject([{ notBeforeMin: 700, notAfterMin: 700 }]);
  const wrong = await send(pinStep, { ...sent, when: 'soon', min: '-5' });
  expect(wrong.state.problems).toHaveLength(2);
  const gone = await send(pinStep, { ...sent, stepId: 'nowhere', when: 'at', min: '700' });
  expect(gone.state.problems).toHaveLength(1);
  expect(await pinsOf()).toHaveLength(1);
  const [pin] = await pinsOf();
  const pinId = pin?.id ?? '';
  const rev = (await read()).rev(pinId);
  await send(removePin, { episodeId, segmentId: segment.id, pinId, rev });
});

test('with a step goes all that names it, in one act; undoing it brings all of it back', async () => {
  const { segment, day } = await read();
  const segmentId = segment.id;
  const STEP = { title: 'Whisk the eggs', role: 'prep', usual: '5', hands: 'hands' };
  const units = { burners: '0', racks: '0', ovenUnit: 'C', coreUnit: 'C' };
  await send(addStep, { episodeId, segmentId, ...STEP, ...units });
  const stepId = (await read()).segment.steps.find(({ title }) => title === STEP.title)?.id ?? '';
  const other = stepAt(segment, 0).id;
  const ends = { fromStepId: stepId, fromAnchor: 'start', toStepId: other, toAnchor: 'end' };
  await send(addLink, { episodeId, ...ends, minLag: '0', reason: 'whisked first' });
  await send(addLot, { episodeId, segmentId, name: 'Whisked eggs', limit: '120' });
  const find = async () => {
    const now = await read();
    const lot = now.segment.perishables.find(({ name }) => name === 'Whisked eggs');
    return { ...now, lotId: lot?.id ?? '', spans: lot?.spans ?? [] };
  };
  await send(addSpan, { episodeId, lotId: (await find()).lotId, ...ends });
  await send(addPin, { episodeId, dayId: day.id, stepId, when: 'notBefore', at: '10:00' });
  await send(addShot, { episodeId, segmentId, title: 'Eggs turn pale', stepId, length: '0:05' });
  const { file } = await read();
  // A new step follows the one written before it.
  expect(file.episode.links.find(({ toStepId }) => toStepId === stepId)).toMatchObject({
    fromStepId: segment.steps.at(-1)?.id,
    fromAnchor: 'end',
    toAnchor: 'start',
    minLagS: 0,
    maxLagS: null,
  });
  const tied = await readTied(stepId);
  expect(Object.values(tied).map((rows: readonly unknown[]) => rows.length)).toEqual([2, 1, 1, 1]);

  const { rev } = await find();
  await send(removeStep, { episodeId, segmentId, stepId, rev: rev(stepId) });
  expect(await readTied(stepId)).toEqual({ links: [], spans: [], pins: [], shots: [] });
  const gone = await find();
  expect(gone.segment.shots.at(-1)).toMatchObject({ title: 'Eggs turn pale', stepId: null });
  expect(gone.spans).toEqual([]);

  const last = (await readChanges({ take: 1 }))[0];
  const act = await readChanges({ groupId: last?.groupId ?? '' });
  expect(act.map(({ entity }) => entity).sort()).toEqual([
    'PerishableSpan',
    'Pin',
    'Shot',
    'Step',
    'StepLink',
    'StepLink',
  ]);
  const undone = await undo(last?.groupId ?? '', { actor: 'local', at: AT });
  expect(undone.ok).toBe(true);
  const back = await find();
  expect(back.segment.shots.at(-1)?.stepId).toBe(stepId);
  expect(back.spans).toEqual([ends]);
  expect(back.day.pins.some((pin) => pin.stepId === stepId)).toBe(true);
  expect(back.file.episode.links.some(({ reason }) => reason === 'whisked first')).toBe(true);
});
