import type { NextRequest } from 'next/server';
import { findFoods } from '#lib/store/reference-search';
import { withoutAmount } from '#lib/units/without-amount';
import { foodHit } from './food-hit';

/** As many as can be looked over at a glance. */
const TAKE = 6;
const LONGEST = 200;

/** Foods for what was typed so far, best first, as an ingredient's form lists them. */
export async function GET(request: NextRequest): Promise<Response> {
  const query = (request.nextUrl.searchParams.get('q') ?? '').slice(0, LONGEST);
  const foods = query.trim() === '' ? [] : await findFoods(withoutAmount(query), { take: TAKE });
  return Response.json(foods.map(foodHit), { headers: { 'cache-control': 'no-store' } });
}
