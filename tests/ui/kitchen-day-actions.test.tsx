import { renderToStaticMarkup } from 'react-dom/server';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { MOST_APPLIANCES } from '#lib/episode/step-limits';
import { USUAL_HOUSE_SHOTS } from '#lib/shoot/house-shots';
import { readChanges } from '#lib/store/read-changes';
import { readKitchen } from '#lib/store/read-kitchen';
import { undo } from '#lib/store/undo';
import { makeKitchen } from '../../app/kitchen/actions';
import { KitchenView } from '../../app/kitchen/_components/kitchen-view';
import {
  addAppliance,
  addHouseShot,
  beginHouseShots,
  moveHouseShot,
  removeAppliance,
  removeHouseShot,
  saveAppliance,
  saveCounts,
  saveHouseShot,
} from '../../app/kitchen/day-actions';
import { AT, withFreshDatabase } from '../store/database';
import { send, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({ usePathname: () => '/', redirect: vi.fn() }));

withFreshDatabase();
beforeAll(async () => {
  await send(makeKitchen, {});
});

async function read() {
  const stored = await readKitchen();
  if (!stored) throw new Error('no kitchen');
  return { ...stored, rev: (id: string) => stored.revs[id] ?? 0 };
}
const page = async () =>
  renderToStaticMarkup(<KitchenView stored={await read()} zones={['UTC']} />);

async function takeBackTheLast() {
  const [last] = await readChanges({ take: 1 });
  const undone = await undo(last?.groupId ?? '', { actor: 'local', at: AT });
  expect(undone.ok).toBe(true);
}

describe('appliances by their forms', () => {
  test('one is added, changed, taken out, and comes back', async () => {
    const { id } = await read();
    await send(addAppliance, { kitchenId: id, name: 'Air fryer', places: '1' });
    const added = await read();
    const [fryer] = added.kitchen.appliances;
    expect(fryer).toMatchObject({ name: 'Air fryer', places: 1 });
    const sent = { applianceId: fryer?.id ?? '', rev: added.rev(fryer?.id ?? '') };
    await send(saveAppliance, { ...sent, name: 'Rice cooker', places: '2' });
    const stale = await send(saveAppliance, { ...sent, name: 'Steamer', places: '2' });
    expect(stale.state.problems.map(({ code }) => code)).toContain('conflict');
    const changed = await read();
    expect(changed.kitchen.appliances).toMatchObject([{ name: 'Rice cooker', places: 2 }]);
    expect(words(await page())).toContain('Take out Rice cooker');
    await send(removeAppliance, { partId: sent.applianceId, rev: changed.rev(sent.applianceId) });
    expect((await read()).kitchen.appliances).toEqual([]);
    await takeBackTheLast();
    expect((await read()).kitchen.appliances).toHaveLength(1);
  });

  test('no name and no place are refused, and one more than fits', async () => {
    const { id } = await read();
    const refused = await send(addAppliance, { kitchenId: id, name: ' ', places: '0' });
    expect(refused.state.problems.map(({ path }) => path)).toEqual(['name', 'places']);
    const microwave = { kitchenId: id, name: 'Microwave', places: '1' };
    for (let at = 1; at < MOST_APPLIANCES; at += 1) await send(addAppliance, microwave);
    const full = await send(addAppliance, microwave);
    expect(full.state.problems).toMatchObject([{ code: 'too-many' }]);
    expect((await read()).kitchen.appliances).toHaveLength(MOST_APPLIANCES);
  });
});

describe('what the day counts', () => {
  test('what is left empty is not counted', async () => {
    const { id, rev, kitchen } = await read();
    expect(kitchen).toMatchObject({ cameraChangeS: null, counterPlaces: null, videoMbps: null });
    const all = { cleanDown: '4', cameraChange: '2.5', counterPlaces: '3', videoMbps: '100' };
    await send(saveCounts, { kitchenId: id, rev: rev(id), ...all });
    const counted = await read();
    expect(counted.kitchen).toMatchObject({
      cleanDownS: 240,
      cameraChangeS: 150,
      counterPlaces: 3,
      videoMbps: 100,
    });
    expect(await page()).toMatch(/<input[^>]*name="cameraChange"[^>]*value="2.5"/);
    await send(saveCounts, { kitchenId: id, rev: counted.rev(id), cleanDown: '5' });
    expect((await read()).kitchen).toMatchObject({
      cleanDownS: 300,
      cameraChangeS: null,
      counterPlaces: null,
      videoMbps: null,
    });
  });

  test('a number that cannot be is refused at its field', async () => {
    const { id, rev } = await read();
    const sent = { kitchenId: id, rev: rev(id), cleanDown: '', counterPlaces: '0' };
    const refused = await send(saveCounts, { ...sent, videoMbps: 'much', cameraChange: 'long' });
    expect(refused.state.problems.map(({ path }) => path).sort()).toEqual([
      'cameraChange',
      'cleanDown',
      'counterPlaces',
      'videoMbps',
    ]);
    expect(refused.state.typed.videoMbps).toBe('much');
  });
});

describe('the shots of every dish by their forms', () => {
  const titles = async () => (await read()).kitchen.houseShots.map(({ title }) => title);
  const usual = USUAL_HOUSE_SHOTS.map(({ title }) => title);

  test('a kitchen without any is offered the usual ones, once', async () => {
    const { id } = await read();
    expect(words(await page())).toContain('Begin with these and change them');
    await send(beginHouseShots, { kitchenId: id });
    expect(await titles()).toEqual(usual);
    expect(words(await page())).not.toContain('Begin with these');
    await send(beginHouseShots, { kitchenId: id });
    expect(await titles()).toEqual(usual);
  });

  test('one is added, moved, changed, taken out; taking back brings the order back', async () => {
    const { id } = await read();
    const shot = { title: 'Fork lifts the cheese', moment: 'firstBite', framing: 'macro' };
    await send(addHouseShot, { kitchenId: id, ...shot, length: '0:03' });
    expect((await read()).kitchen.houseShots.at(-1)).toMatchObject({ ...shot, lengthS: 3 });
    const shotId = (await read()).kitchen.houseShots.at(-1)?.id ?? '';
    await send(moveHouseShot, { kitchenId: id, shotId, to: 'up' });
    const moved = [...usual.slice(0, -1), shot.title, ...usual.slice(-1)];
    expect(await titles()).toEqual(moved);
    const top = (await read()).kitchen.houseShots[0]?.id ?? '';
    const first = await send(moveHouseShot, { kitchenId: id, shotId: top, to: 'up' });
    expect(first.state.done).toContain('the first already');
    const { rev } = await read();
    const form = { shotId, rev: rev(shotId), ...shot, title: 'Cheese pull' };
    await send(saveHouseShot, { ...form, length: '' });
    expect((await read()).kitchen.houseShots.at(-2)).toMatchObject({
      title: 'Cheese pull',
      lengthS: 0,
    });
    const now = await read();
    await send(removeHouseShot, { partId: shotId, rev: now.rev(shotId) });
    expect(await titles()).toEqual(usual);
    await takeBackTheLast();
    expect((await titles()).at(-2)).toBe('Cheese pull');
  });

  test('what cannot be is refused at its field', async () => {
    const { id } = await read();
    const sent = { kitchenId: id, title: '', moment: 'dessert', length: 'long' };
    const refused = await send(addHouseShot, sent);
    expect(refused.state.problems.map(({ path }) => path).sort()).toEqual([
      'length',
      'moment',
      'title',
    ]);
  });
});
