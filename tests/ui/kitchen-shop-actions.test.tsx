import { renderToStaticMarkup } from 'react-dom/server';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { readChanges } from '#lib/store/read-changes';
import { readKitchen } from '#lib/store/read-kitchen';
import { readShopWalks } from '#lib/store/read-shop-walks';
import { undo } from '#lib/store/undo';
import { makeKitchen } from '../../app/kitchen/actions';
import { KitchenView } from '../../app/kitchen/_components/kitchen-view';
import {
  addShop,
  moveSection,
  removeShop,
  saveShelf,
  saveShop,
} from '../../app/kitchen/shop-actions';
import { AT, withFreshDatabase } from '../store/database';
import { send, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({ usePathname: () => '/', redirect: vi.fn() }));

withFreshDatabase();
beforeAll(async () => {
  await send(makeKitchen, {});
});

const stored = async () => {
  const kitchen = await readKitchen();
  if (!kitchen) throw new Error('no kitchen');
  return kitchen;
};
const shop = async () => {
  const [first] = await readShopWalks();
  if (!first) throw new Error('no shop');
  return first;
};

describe('how lists are written', () => {
  test('the units of the shelf and how far prices move are kept; what is no percent is refused', async () => {
    const { id, revs } = await stored();
    const sent = { kitchenId: id, rev: revs[id] ?? 0, shelfUnits: 'us' };
    const refused = await send(saveShelf, { ...sent, drift: 'much' });
    expect(refused.state.problems.map(({ path }) => path)).toEqual(['drift']);
    await send(saveShelf, { ...sent, drift: '7.5' });
    expect((await stored()).kitchen).toMatchObject({ shelfUnits: 'us', priceDriftPermille: 75 });
  });
});

describe('shops', () => {
  test('one is added, named anew, walked in another order, taken out, and comes back', async () => {
    const empty = await send(addShop, { name: ' ' });
    expect(empty.state.problems.map(({ path }) => path)).toEqual(['name']);
    await send(addShop, { name: 'Quay market' });
    const first = await shop();
    await send(saveShop, { shopId: first.shop.id, rev: first.rev, name: 'Pier market' });
    const move = { shopId: first.shop.id, section: 'bakery' };
    await send(moveSection, { ...move, to: 'up' });
    expect((await shop()).shop).toMatchObject({ name: 'Pier market' });
    expect((await shop()).shop.sections.slice(0, 2)).toEqual(['bakery', 'produce']);
    await send(moveSection, { ...move, to: 'up' });
    expect((await shop()).shop.sections[0]).toBe('bakery');
    const shops = await readShopWalks();
    const page = renderToStaticMarkup(
      <KitchenView stored={await stored()} zones={['UTC']} shops={shops} />,
    );
    expect(words(page)).toContain('Take out Pier market and its prices');
    const { rev } = await shop();
    await send(removeShop, { shopId: first.shop.id, rev });
    expect(await readShopWalks()).toEqual([]);
    const [last] = await readChanges({ take: 1 });
    await undo(last?.groupId ?? '', { actor: 'local', at: AT });
    expect(await readShopWalks()).toHaveLength(1);
  });
});
