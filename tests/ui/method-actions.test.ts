import { beforeAll, describe, expect, test, vi } from 'vitest';
import { description } from '#lib/publish/description';
import { importEpisodeFile } from '#lib/store/import-file';
import { readChanges } from '#lib/store/read-changes';
import { readEpisodeFile } from '#lib/store/read-episode';
import { undo } from '#lib/store/undo';
import { UNTOUCHED, type FormState } from '../../app/_ui/form/form-state';
import type { MethodOffer } from '../../app/episodes/[id]/day/method-fields';
import { pasteMethod } from '../../app/episodes/[id]/day/method-actions';
import { AT, withFreshDatabase } from '../store/database';
import { demoFile, Redirected } from './page-support';

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
const METHOD =
  'Preheat the oven to 180 °C.\nMix for 5 minutes.\nBake for 40–50 minutes. Serve with the peas.';

withFreshDatabase();
let episodeId = '';
beforeAll(async () => {
  const done = await importEpisodeFile(demoFile(), AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  episodeId = done.value.episodeId;
});

async function read() {
  const file = await readEpisodeFile(episodeId, NOW);
  const segment = file?.episode.segments.find(({ title }) => title === 'Barley skillet');
  if (!file || !segment) throw new Error('the demo has a skillet');
  return { file, segment, links: file.episode.links };
}

/** Presses one of the two buttons with what the form shows, but for some fields. */
async function press(
  act: 'read' | 'add' | 'keep',
  state: FormState,
  changed: Readonly<Record<string, string | null>> = {},
): Promise<{ state: FormState; href: string }> {
  const { segment } = await read();
  const form = new FormData();
  // The form draws what was offered and sends it not.
  const { offer: _offer, ...typed } = state.typed;
  const texts = { episodeId, segmentId: segment.id, ...typed, ...changed, act };
  for (const [name, text] of Object.entries(texts)) if (text !== null) form.set(name, text);
  try {
    return { state: await pasteMethod(state, form), href: '' };
  } catch (error) {
    if (error instanceof Redirected) return { state, href: error.href };
    throw error;
  }
}

const offerOf = (state: FormState) => JSON.parse(state.typed.offer ?? 'null') as MethodOffer | null;
const paths = (state: FormState) => state.problems.map(({ path }) => path);
const pasted = () => press('read', UNTOUCHED, { method: METHOD });

describe('reading', () => {
  test('offers steps with what was read, and stores nothing', async () => {
    const before = await read();
    const { state } = await pasted();
    expect(state.problems).toEqual([]);
    expect(state.done).toBe('3 steps were read. Nothing is added before you say so.');
    const offer = offerOf(state);
    expect(offer?.steps.map(({ title }) => title)).toEqual(['Mix', 'Bake', 'Serve with the peas']);
    expect(offer?.rules.map(({ name }) => name)).toEqual(['look', 'rest']);
    expect(offer?.shown.map(({ title }) => title)).toEqual(['Heating the oven', 'Washing up']);
    expect(state.typed).toMatchObject({
      'step-1': 'on',
      'low-1': '40',
      'usual-1': '45',
      'high-1': '50',
      'oven-1': '356',
      'rule-look': 'on',
      'minutes-look': '1',
    });
    expect((await read()).file).toEqual(before.file);
  });

  test('the same text again keeps what was typed; another begins anew', async () => {
    const { state } = await pasted();
    const again = await press('read', state, { 'usual-1': '47', 'step-0': null });
    expect(again.state.typed['usual-1']).toBe('47');
    expect(again.state.typed['step-0']).toBeUndefined();
    const other = await press('read', again.state, { method: 'Simmer for 20 minutes.' });
    expect(other.state.typed).toMatchObject({ 'usual-0': '20', 'step-0': 'on' });
    expect(other.state.typed['usual-1']).toBeUndefined();
  });

  test.each([
    ['', 'empty'],
    ['The batter is thin.', 'none'],
    ['x'.repeat(20_001), 'too-long'],
  ])('what cannot be read is refused at the text, which is kept %#', async (method, code) => {
    const { state } = await press('read', UNTOUCHED, { method });
    expect(state.problems).toMatchObject([{ path: 'method', code }]);
    expect(state.typed.method).toBe(method);
    expect(offerOf(state)).toBeNull();
  });

  test('a text of far too many characters is refused before it is read', async () => {
    const { state } = await press('read', UNTOUCHED, { method: 'x'.repeat(400_001) });
    expect(paths(state)).toEqual(['method']);
  });
});

describe('adding', () => {
  test('what cannot be is refused at its field; what was offered and typed stays', async () => {
    const { state } = await pasted();
    const wrong = { 'usual-0': 'five', 'low-1': '60', 'oven-1': '', 'minutes-look': '' };
    const refused = await press('add', state, wrong);
    expect(paths(refused.state)).toEqual(['usual-0', 'low-1', 'oven-1', 'minutes-look']);
    expect(refused.state.typed).toMatchObject(wrong);
    expect(offerOf(refused.state)?.steps).toHaveLength(3);
    const hot = await press('add', state, { 'oven-1': '900' });
    expect(hot.state.problems[0]?.message).toContain('more than the most that fits here, 662 °F');
  });

  test('what is not ticked is not looked at; nothing ticked is refused', async () => {
    const { state } = await pasted();
    const off = { 'step-0': null, 'step-1': null, 'step-2': null, 'usual-0': 'five' };
    const none = await press('add', state, off);
    expect(none.state.problems.map(({ message }) => message)).toEqual([
      'Nothing is ticked: tick the steps to add.',
    ]);
  });

  test('a text that was changed since is to be read again', async () => {
    const { state } = await pasted();
    const changed = await press('add', state, { method: `${METHOD} Rest for 5 minutes.` });
    expect(changed.state.problems).toMatchObject([{ path: 'method', code: 'changed' }]);
    expect(offerOf(changed.state)?.steps).toHaveLength(3);
  });

  test('line ends of a browser without script are the same text', async () => {
    const crlf = METHOD.replaceAll('\n', '\r\n');
    const { state } = await press('read', UNTOUCHED, { method: crlf });
    const refused = await press('add', state, { method: crlf, read: crlf, 'usual-0': 'x' });
    expect(paths(refused.state)).toEqual(['usual-0']);
  });

  test('steps and ties are added in one act after the dish’s last step, and undone in one', async () => {
    const before = await read();
    const { state } = await pasted();
    const done = await press('add', state, { 'usual-1': '42', 'oven-1': '180 C', 'step-2': null });
    const after = await read();
    const added = after.segment.steps.slice(before.segment.steps.length);
    expect(done.href).toContain(`at=${added[0]?.id ?? ''}`);
    expect(added.map(({ title, role, usualS, hands }) => [title, role, usualS, hands])).toEqual([
      ['Mix', 'prep', 300, true],
      ['Bake', 'cook', 2520, false],
      ['Look in halfway: bake', 'cook', 60, true],
      ['Let it rest before it is cut', 'wait', 600, false],
    ]);
    const [mix, bake, look, rest] = added;
    expect(bake).toMatchObject({
      lowS: 2400,
      highS: 3000,
      racks: 1,
      oven: { ovenId: null, milliC: 180_000 },
    });
    const last = before.segment.steps.at(-1);
    const tied = after.links.filter(({ toStepId }) => added.some(({ id }) => id === toStepId));
    expect(
      tied.map(({ fromStepId, fromAnchor, toStepId }) => [fromStepId, fromAnchor, toStepId]),
    ).toEqual([
      [last?.id, 'end', mix?.id],
      [mix?.id, 'end', bake?.id],
      [bake?.id, 'start', look?.id],
      [bake?.id, 'end', rest?.id],
    ]);
    // The dish has washing up of its own, which stays.
    expect(after.segment.washUpS).toBe(before.segment.washUpS);

    const act = (await readChanges({ take: 1 }))[0]?.groupId ?? '';
    expect((await undo(act, { actor: 'local', at: AT })).ok).toBe(true);
    const back = await read();
    expect(back.segment.steps).toEqual(before.segment.steps);
    expect(back.links).toEqual(before.links);
  });

  test('the pasted text is kept whole, and the description prints it', async () => {
    const before = (await read()).segment.recipe?.method ?? '';
    const text = `Rub the tray with oil, thinly.\n${METHOD}`;
    const { state } = await press('read', UNTOUCHED, { method: text });
    expect((await press('add', state)).href).not.toBe('');
    const { file, segment } = await read();
    expect(segment.recipe?.method).toContain(text);
    expect(segment.recipe?.method).toContain(before);
    const printed = description(file).text;
    for (const line of text.split('\n')) expect(printed).toContain(line);
    const act = (await readChanges({ take: 1 }))[0]?.groupId ?? '';
    expect((await undo(act, { actor: 'local', at: AT })).ok).toBe(true);
    expect((await read()).segment.recipe?.method).toBe(before);
  });

  test('a text without steps is kept too, and can be put right or taken away', async () => {
    const steps = (await read()).segment.steps;
    const texts = ['The dough wants to be cold.', 'The dough is cold, the hands are warm.', ''];
    for (const method of texts) {
      const done = await press('keep', UNTOUCHED, { method });
      expect(done.state.problems).toEqual([]);
      expect((await read()).segment.recipe?.method).toBe(method);
    }
    expect((await read()).segment.steps).toEqual(steps);
    const long = 'x'.repeat(8001);
    const refused = await press('keep', UNTOUCHED, { method: long });
    expect(refused.state.problems).toMatchObject([{ path: 'method', code: 'too-long' }]);
    expect(refused.state.typed.method).toBe(long);
  });

  test('a dish that is gone is told', async () => {
    const { state } = await pasted();
    const gone = await press('add', state, { segmentId: 'nowhere' });
    expect(gone.state.problems).toMatchObject([{ code: 'gone' }]);
  });
});
