import type { Metadata } from 'next';
import Link from 'next/link';
import { SlateHead } from '../_ui/slate-head';
import { readFoodsInUse } from '#lib/store/read-foods-in-use';
import { readKitchen } from '#lib/store/read-kitchen';
import { readShopNames } from '#lib/store/read-shops';
import { readFoodsToWatch } from '#lib/store/read-watched-lots';
import { findFoods } from '#lib/store/reference-search';
import { shortByFood } from '#lib/shopping/runs-out';
import { aWeekOn, watchedLots } from '#lib/shopping/watched-lots';
import { localDate } from '#lib/units/local-date';
import { FoodList } from './_components/food-list';
import { FoundFoods } from './_components/found-foods';
import { LookUp } from './_components/look-up';
import { RunsOutPart } from './_components/runs-out-part';
import { WatchList } from './_components/watch-list';
import { plannedNeeds } from './planned-needs';
import { stockedFoods } from './stocked-foods';

export const metadata: Metadata = { title: 'Pantry' };

interface Props {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

const FOUND = 20;
const ON_A_PAGE = 40;
const LONGEST = 200;

export default async function PantryPage({ searchParams }: Props) {
  const asked = await searchParams;
  const one = (name: string) => {
    const value = asked[name];
    return typeof value === 'string' ? value : undefined;
  };
  const words = (one('q') ?? '').slice(0, LONGEST).trim();
  const zone = (await readKitchen())?.kitchen.zone ?? 'UTC';
  const now = new Date();
  const today = localDate(now, zone);
  const first = words === '' && one('foods') === undefined;
  const week = aWeekOn(today);
  const watched = first
    ? watchedLots(await stockedFoods(await readFoodsToWatch(week)), today, week)
    : null;
  const { planned, all: short } = await plannedNeeds(today, now);
  const foods = await readFoodsInUse({ words, after: one('foods'), take: ON_A_PAGE });
  const found = words === '' ? [] : await findFoods(words, { take: FOUND });
  const inUse = new Set(foods.rows.map(({ id }) => id));
  const shops = new Map((await readShopNames()).map(({ id, name }) => [id, name]));
  return (
    <>
      <SlateHead kind="Pantry" title="Foods and stock" />
      <LookUp query={words} />
      <p className="mt-2 print:hidden">
        <Link className="link inline-flex min-h-11 items-center" href="/pantry/foods/new">
          New food from a label
        </Link>
      </p>
      {first && (
        <section aria-labelledby="runs-out" className="mt-6">
          <h2 id="runs-out">Runs out on planned days</h2>
          <RunsOutPart all={short} planned={planned} />
        </section>
      )}
      {watched && (
        <section aria-labelledby="dates" className="mt-10">
          <h2 id="dates">Past, or ends this week</h2>
          <WatchList lots={watched} />
        </section>
      )}
      <section aria-labelledby="foods" className="mt-10">
        <h2 id="foods">{words === '' ? 'Foods in use' : 'In use already'}</h2>
        <FoodList foods={foods} words={words} shops={shops} short={shortByFood(short)} />
      </section>
      {words !== '' && (
        <section aria-labelledby="found" className="mt-10">
          <h2 id="found">In the tables</h2>
          <FoundFoods query={words} found={found.filter(({ id }) => !inUse.has(id))} />
        </section>
      )}
    </>
  );
}
