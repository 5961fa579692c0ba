import 'server-only';
import { v7 as uuid } from 'uuid';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { folded } from '#lib/store/fold';
import { ALIVE } from '#lib/store/load';

/** Shops that are offered at most where one is typed. */
const OFFERED = 50;

/** The shops by name. */
export async function readShopNames(
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly { readonly id: string; readonly name: string }[]> {
  return database().shop.findMany({
    where: { ...ALIVE, creatorId },
    orderBy: [{ nameFolded: 'asc' }, { id: 'asc' }],
    take: OFFERED,
    select: { id: true, name: true },
  });
}

/** The shop of a name, written in whatever case, and the edit that makes it where there is none; none for no name. */
export async function shopNamed(
  name: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<{ readonly shopId: string | null; readonly edits: Edit[] }> {
  if (name === '') return { shopId: null, edits: [] };
  const known = await database().shop.findFirst({
    where: { ...ALIVE, creatorId, nameFolded: folded(name) },
    orderBy: { id: 'asc' },
    select: { id: true },
  });
  if (known) return { shopId: known.id, edits: [] };
  const id = uuid();
  return { shopId: id, edits: [{ op: 'create', entity: 'Shop', row: { id, name } }] };
}

/** The currency of the price that was typed last; empty where none was. */
export async function readLastCurrency(creatorId = DEFAULT_CREATOR_ID): Promise<string> {
  const last = await database().price.findFirst({
    where: { ...ALIVE, creatorId },
    orderBy: { id: 'desc' },
    select: { currency: true },
  });
  return last?.currency ?? '';
}
