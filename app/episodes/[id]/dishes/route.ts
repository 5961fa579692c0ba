import type { NextRequest } from 'next/server';
import { readDishChoices } from '#lib/store/read-dishes';
import { dishHit } from '../dish-hit';

/** As many as can be looked over at a glance. */
const TAKE = 8;
const LONGEST = 200;

/** Dishes of all episodes whose words fit, the latest first, as an ingredient's form lists them. */
export async function GET(request: NextRequest): Promise<Response> {
  const words = (request.nextUrl.searchParams.get('q') ?? '').slice(0, LONGEST);
  const dishes = await readDishChoices({ words, take: TAKE });
  return Response.json(dishes.map(dishHit), { headers: { 'cache-control': 'no-store' } });
}
