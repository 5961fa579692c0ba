import { beforeAll, describe, expect, it } from 'vitest';
import { episodeScope, spanScope, type ListEvent } from '#lib/shopping/list-events';
import { shoppingList } from '#lib/shopping/shopping-list';
import { database } from '#lib/store/client';
import { importEpisodeFile } from '#lib/store/import-file';
import { keepListEvents } from '#lib/store/list-events';
import { isListThere, readListEvents } from '#lib/store/read-list-events';
import { readShoppingFiles } from '#lib/store/read-shopping';
import { readChanges } from '#lib/store/read-changes';
import { undo } from '#lib/store/undo';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';

withFreshDatabase();

let episodeId = '';
let foodId = '';
beforeAll(async () => {
  const done = await importEpisodeFile(FILE, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  episodeId = done.value.episodeId;
  const food = await database().food.findFirst({ where: { deletedAt: null, packs: { some: {} } } });
  foodId = food?.id ?? '';
});

const scope = () => episodeScope(episodeId);
let made = 0;
function event(more: Partial<ListEvent>): ListEvent {
  made += 1;
  const at = new Date(AT.getTime() + made * 1000).toISOString();
  const own = {
    id: `tick-${made}`,
    scope: scope(),
    deviceId: 'phone',
    deviceSeq: made,
    at,
    foodId,
  };
  return { ...own, kind: 'unticked', payload: {}, ...more } as ListEvent;
}
const ticked = (mg: number | null) =>
  event({ kind: 'ticked', payload: { packs: [{ packId: null, count: 2, mg }] } });
const putAway = (eventId: string, more: Partial<ListEvent> = {}) =>
  event({ kind: 'putAway', payload: { eventId }, ...more } as Partial<ListEvent>);
const keep = (events: readonly ListEvent[]) => keepListEvents(scope(), events, AT);
const stockOf = async () => {
  const moves = await database().stockMove.findMany({
    where: { deletedAt: null, lot: { foodId, deletedAt: null } },
  });
  return moves.reduce((sum, { deltaMg }) => sum + deltaMg, 0);
};

describe('entries of a shopping list in the store', () => {
  it('are kept once, however often they are sent, and read back as they were', async () => {
    const sent = [ticked(1000), event({})];
    expect(await keep(sent)).toEqual({ kept: sent.map(({ id }) => id), already: [], refused: [] });
    expect(await keep(sent)).toEqual({ kept: [], already: sent.map(({ id }) => id), refused: [] });
    const news = await readListEvents(scope());
    expect(news.events).toEqual(sent);
    expect(await readListEvents(scope(), news.cursor)).toMatchObject({ whole: false, events: [] });
  });

  it('refuses an id or a number that another has, and an entry of another list', async () => {
    const [first] = (await readListEvents(scope())).events;
    if (!first) throw new Error('an entry');
    const other = { ...ticked(5), deviceSeq: first.deviceSeq };
    const twin = { ...ticked(5), id: first.id };
    const elsewhere = { ...ticked(5), scope: spanScope('2026-05-01', '2026-05-02') };
    const { refused } = await keep([other, twin, elsewhere]);
    expect(refused.map(({ problem }) => problem.code)).toEqual([
      'number-taken',
      'id-taken',
      'scope',
    ]);
  });

  it('puts goods away exactly once, from two devices at the same time too', async () => {
    const before = await stockOf();
    const tick = ticked(450_000);
    await keep([tick]);
    const mine = putAway(tick.id);
    const other = putAway(tick.id, { deviceId: 'laptop' });
    const answers = await Promise.all([keep([mine]), keep([other]), keep([mine])]);
    expect(answers.flatMap(({ refused }) => refused)).toEqual([]);
    expect(await stockOf()).toBe(before + 450_000);
  });

  it('says why goods cannot be put away, and keeps nothing of it', async () => {
    const tick = ticked(null);
    await keep([tick]);
    const before = await stockOf();
    const { refused } = await keep([putAway(tick.id), putAway('nowhere')]);
    expect(refused.map(({ problem }) => problem.code)).toEqual(['amount-open', 'gone']);
    expect(await stockOf()).toBe(before);
  });

  it('an undone entry is told as gone', async () => {
    const { cursor } = await readListEvents(scope());
    const tick = ticked(7);
    await keep([tick]);
    const [last] = await readChanges({ take: 1 });
    expect(await undo(last?.groupId ?? '', { actor: 'me', at: AT })).toMatchObject({ ok: true });
    expect(await readListEvents(scope(), cursor)).toMatchObject({ events: [], gone: [tick.id] });
  });
});

describe('the files of a list', () => {
  it('are those of an episode, or of all filmed in a span; later ones serve a rest', async () => {
    const date = FILE.day?.date ?? '';
    const again = await importEpisodeFile(FILE, AT);
    if (!again.ok) throw new Error('imported twice');
    const span = await readShoppingFiles(spanScope(date, date), AT.toISOString());
    expect(span?.files.map(({ episode }) => episode.id).sort()).toEqual(
      [episodeId, again.value.episodeId].sort(),
    );
    const one = await readShoppingFiles(scope(), AT.toISOString());
    expect(one?.files).toHaveLength(1);
    expect(one?.later.map(({ episode }) => episode.id)).toEqual([again.value.episodeId]);
    const need = (of: typeof one) =>
      shoppingList(of?.files ?? []).items.map((item) => [item.foodId, item.needMg ?? 0] as const);
    const single = new Map(need(one));
    for (const [id, mg] of need(span)) expect(mg).toBeCloseTo(2 * (single.get(id) ?? NaN), 3);
    expect(await readShoppingFiles(episodeScope('nowhere'), AT.toISOString())).toBeNull();
    expect(await isListThere(scope())).toBe(true);
    expect(await isListThere(episodeScope('nowhere'))).toBe(false);
  });
});
