import { beforeAll, describe, expect, test, vi } from 'vitest';
import { onDayWords } from '#lib/shoot/step-words';
import { importEpisodeFile } from '#lib/store/import-file';
import { readChanges } from '#lib/store/read-changes';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { undo } from '#lib/store/undo';
import { saveOnDay } from '../../app/episodes/[id]/day/on-day-actions';
import { AT, withFreshDatabase } from '../store/database';
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

withFreshDatabase();
let episodeId = '';
beforeAll(async () => {
  const done = await importEpisodeFile(demoFile(), AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  episodeId = done.value.episodeId;
});

async function read() {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z');
  const segment = file?.episode.segments.find(({ recipe }) => recipe);
  const place = file?.day?.segments.find(({ segmentId }) => segmentId === segment?.id);
  if (!segment || !place) throw new Error('the demo films a dish');
  const revs = await readRevisions(episodeId);
  const ids = { episodeId, segmentId: segment.id, placeId: place.id, rev: revs[place.id] ?? 0 };
  return { segment, place, ids };
}

describe('a segment on its day', () => {
  test('what is done, when it is filmed and what becomes of its food is kept in one act', async () => {
    const { ids, place } = await read();
    expect(place).toMatchObject({ part: 'all', fate: null });
    const said = { part: 'film', fate: 'kept', filmedWhen: 'afterReady', wasFilmedWhen: '' };
    const saved = await send(saveOnDay, { ...ids, ...said });
    expect(saved.href).toContain(`#row-on-day-${ids.segmentId}`);
    const now = await read();
    expect(now.place).toMatchObject({ part: 'film', fate: 'kept' });
    expect(now.segment.filmedWhen).toBe('afterReady');
    expect(onDayWords(now.place, now.segment)).toBe(
      'only its shots, cooked before, filmed after everything is ready, its food is kept',
    );
    const [last] = await readChanges({ take: 1 });
    const undone = await undo(last?.groupId ?? '', { actor: 'local', at: AT });
    expect(undone.ok).toBe(true);
    const back = await read();
    expect(back.place).toMatchObject({ part: 'all', fate: null });
    expect(back.segment.filmedWhen).toBeNull();
  });

  test('what cannot be is refused at its field', async () => {
    const { ids } = await read();
    const sent = { ...ids, part: 'some', fate: 'sold', filmedWhen: 'never', wasFilmedWhen: '' };
    const refused = await send(saveOnDay, sent);
    expect(refused.state.problems.map(({ path }) => path)).toEqual(['part', 'fate', 'filmedWhen']);
    const good = { part: 'cook', fate: '', filmedWhen: '', wasFilmedWhen: '' };
    const gone = await send(saveOnDay, { ...ids, ...good, placeId: 'nowhere' });
    expect(gone.state.problems).toMatchObject([{ code: 'gone' }]);
  });

  test('a stale tab overwrites nothing', async () => {
    const { ids } = await read();
    const plain = { part: 'all', fate: '', filmedWhen: '', wasFilmedWhen: '' };
    await send(saveOnDay, { ...ids, ...plain, filmedWhen: 'beforeDirty' });
    const stale = await send(saveOnDay, { ...ids, ...plain, filmedWhen: 'afterReady' });
    expect(stale.state.problems).toMatchObject([{ path: 'filmedWhen', code: 'conflict' }]);
    const other = await send(saveOnDay, { ...ids, ...plain, part: 'cook' });
    expect(other.state.problems.map(({ code }) => code)).toContain('conflict');
    const now = await read();
    expect(now.segment.filmedWhen).toBe('beforeDirty');
    expect(now.place.part).toBe('all');
  });
});
