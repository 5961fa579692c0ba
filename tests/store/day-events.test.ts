import { beforeAll, describe, expect, test } from 'vitest';
import type { DayEvent } from '#lib/shoot/day-log';
import { database } from '#lib/store/client';
import { keepDayEvents, type KeptEvents } from '#lib/store/day-events';
import { importEpisodeFile } from '#lib/store/import-file';
import { isDayOf, readDayEvents } from '#lib/store/read-day-events';
import { readEpisodeFile } from '#lib/store/read-episode';
import { undo } from '#lib/store/undo';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';

withFreshDatabase();

let episodeId = '';
let dayId = '';
let stepId = '';
beforeAll(async () => {
  const done = await importEpisodeFile(FILE, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  episodeId = done.value.episodeId;
  const file = await readEpisodeFile(episodeId, AT.toISOString());
  dayId = file?.day?.id ?? '';
  stepId = file?.episode.segments.flatMap(({ steps }) => steps).at(0)?.id ?? '';
  expect([dayId, stepId]).not.toContain('');
});

let made = 0;
function event(over: Partial<DayEvent> = {}): DayEvent {
  made += 1;
  const at = new Date(AT.getTime() + made * 1000).toISOString();
  const own = { id: `ev-${made}`, deviceId: 'phone', deviceSeq: made, at };
  return { ...own, kind: 'done', refs: { stepId }, payload: {}, ...over } as DayEvent;
}
const note = (text: string) => event({ kind: 'note', refs: {}, payload: { text } });
const keep = (events: readonly DayEvent[], day = dayId) => keepDayEvents(day, events, AT);
const stored = async (events: readonly DayEvent[]) => {
  const ids = new Set(events.map(({ id }) => id));
  return (await readDayEvents(dayId)).events.filter(({ id }) => ids.has(id));
};
const codes = ({ refused }: KeptEvents) => refused.map(({ id, problem }) => [id, problem.code]);
const journalled = (id: string) => database().change.count({ where: { entityId: id } });

describe('keeping what was entered on the day', () => {
  test('each event is kept with all it says, and stands in the journal once', async () => {
    const sent = [event(), event({ kind: 'takenBack' }), note('Butter was soft')];
    const answer = await keep(sent);
    expect(answer).toEqual({
      kept: sent.map(({ id }) => id),
      already: [],
      refused: [],
      unknownSteps: [],
    });
    expect(await stored(sent)).toEqual(sent);
    for (const { id } of sent) expect(await journalled(id)).toBe(1);
  });

  test('sent again, as a whole or among new ones, it is there already and stands once', async () => {
    const first = [event(), note('one')];
    await keep(first);
    const more = event();
    const answer = await keep([...first, more, more]);
    expect(answer).toMatchObject({ kept: [more.id], already: first.map(({ id }) => id) });
    expect(await stored([...first, more])).toEqual([...first, more]);
    for (const { id } of [...first, more]) expect(await journalled(id)).toBe(1);
  });

  test('ten requests with overlapping events at once: each arrives once', async () => {
    const all = Array.from({ length: 12 }, (_, n) => note(`race ${n}`));
    const answers = await Promise.all(
      Array.from({ length: 10 }, (_, n) => keep(n % 2 === 0 ? all : all.slice(n % 3, 8))),
    );
    expect(await stored(all)).toEqual(all);
    expect(answers.flatMap(({ kept }) => kept).sort()).toEqual(all.map(({ id }) => id).sort());
    for (const [n, { kept, already, refused }] of answers.entries()) {
      const sent = n % 2 === 0 ? all : all.slice(n % 3, 8);
      expect([...kept, ...already].sort()).toEqual(sent.map(({ id }) => id).sort());
      expect(refused).toEqual([]);
    }
    for (const { id } of all) expect(await journalled(id)).toBe(1);
  });

  test('the number of a device under another id is refused by name, the rest is kept', async () => {
    const first = event();
    await keep([first]);
    const clash = event({ deviceSeq: first.deviceSeq });
    const elsewhere = event({ deviceSeq: first.deviceSeq, deviceId: 'laptop' });
    const answer = await keep([clash, elsewhere]);
    expect(codes(answer)).toEqual([[clash.id, 'number-taken']]);
    expect(answer.refused[0]?.problem).toMatchObject({
      path: 'events[0].deviceSeq',
      facts: { deviceSeq: first.deviceSeq, holder: first.id },
    });
    expect(answer.kept).toEqual([elsewhere.id]);
    expect(await stored([first, clash, elsewhere])).toEqual([first, elsewhere]);
  });

  test('within one request the first of two with one number is kept', async () => {
    const first = event();
    const second = event({ deviceSeq: first.deviceSeq });
    const answer = await keep([first, second]);
    expect(answer.kept).toEqual([first.id]);
    expect(codes(answer)).toEqual([[second.id, 'number-taken']]);
  });

  test('two that race for one number: one is kept, the other refused', async () => {
    const one = event();
    const other = event({ deviceSeq: one.deviceSeq });
    const answers = await Promise.all([keep([one]), keep([other])]);
    expect(answers.flatMap(({ kept }) => kept)).toHaveLength(1);
    expect(answers.flatMap(codes).map(([, code]) => code)).toEqual(['number-taken']);
    expect(await stored([one, other])).toHaveLength(1);
  });

  test('an id that stands with another number or day is refused', async () => {
    const first = event();
    await keep([first]);
    const renumbered = { ...first, deviceSeq: 9_000 };
    expect(codes(await keep([renumbered]))).toEqual([[first.id, 'id-taken']]);
    expect(await keep([renumbered, first])).toMatchObject({ already: [first.id], refused: [] });
    expect(await stored([first])).toEqual([first]);
  });

  test('an unknown day refuses all and keeps nothing', async () => {
    const lost = [event(), note('where?')];
    const answer = await keep(lost, 'no-such-day');
    expect(codes(answer)).toEqual(lost.map(({ id }) => [id, 'gone']));
    expect(answer.kept).toEqual([]);
    const ids = lost.map(({ id }) => id);
    expect(await database().dayEvent.count({ where: { id: { in: ids } } })).toBe(0);
  });

  test('a step that is not there is kept and named', async () => {
    const known = event();
    const unknown = event({ refs: { stepId: 'taken-out' } });
    const wash = event({ refs: { entryId: 'wash:taken-out' } });
    const answer = await keep([known, unknown, wash, note('x')]);
    expect(answer.refused).toEqual([]);
    expect(answer.unknownSteps).toEqual([unknown.id]);
    expect(await stored([unknown])).toEqual([unknown]);
  });
});

describe('hearing of it', () => {
  test('after a place in the journal stands what arrived since, also if it was made earlier', async () => {
    await keep([note('before')]);
    const { cursor, whole } = await readDayEvents(dayId);
    expect(whole).toBe(true);
    expect(await readDayEvents(dayId, cursor)).toEqual({
      cursor,
      whole: false,
      events: [],
      gone: [],
    });
    const late = event({ at: '2026-01-01T00:00:00.000Z' });
    await keep([late]);
    const news = await readDayEvents(dayId, cursor);
    expect(news).toMatchObject({ whole: false, events: [late], gone: [] });
    expect((await readDayEvents(dayId, news.cursor)).events).toEqual([]);
    expect((await readDayEvents(dayId)).events[0]).toEqual(late);
  });

  test('what was undone is named as gone; sent again it stays undone', async () => {
    const sent = event();
    await keep([sent]);
    const { cursor } = await readDayEvents(dayId);
    const change = await database().change.findFirstOrThrow({ where: { entityId: sent.id } });
    expect(change.label).toBe('Done on the day');
    expect((await undo(change.groupId, { actor: 'me', at: AT })).ok).toBe(true);
    expect(await readDayEvents(dayId, cursor)).toMatchObject({ events: [], gone: [sent.id] });
    expect(await keep([sent])).toMatchObject({ kept: [], already: [sent.id], refused: [] });
    expect(await stored([sent])).toEqual([]);
  });

  test('a place that the journal has not reached is answered by the whole day', async () => {
    const { cursor, events } = await readDayEvents(dayId);
    expect(await readDayEvents(dayId, cursor + 1000)).toEqual({
      cursor,
      whole: true,
      events,
      gone: [],
    });
  });

  test('another day has its own events', async () => {
    await keep([note('mine')]);
    expect((await readDayEvents('another-day')).events).toEqual([]);
    const { cursor } = await readDayEvents(dayId);
    await keep([note('mine too')]);
    expect((await readDayEvents('another-day', cursor)).events).toEqual([]);
  });

  test('a day belongs to its episode only', async () => {
    expect(await isDayOf(episodeId, dayId)).toBe(true);
    expect(await isDayOf('another', dayId)).toBe(false);
    expect(await isDayOf(episodeId, 'another')).toBe(false);
  });
});
