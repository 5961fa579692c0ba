import 'server-only';
import type { Result } from '#lib/result';
import type { ListScope } from '#lib/shopping/list-events';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE } from '#lib/store/load';
import {
  keepNamedPhoto,
  namesPhoto,
  readNamedPhoto,
  type NamedPhoto,
} from '#lib/store/named-photos';

/** Photos of labels from the shop, which entries of a shopping list name; see `named-photos.ts`. */

async function isNamed(scope: ListScope, sha256: string, creatorId: string): Promise<boolean> {
  const rows = await database().tick.findMany({
    where: { ...ALIVE, creatorId, scope, kind: { in: ['instead', 'photographed'] } },
    select: { payload: true },
  });
  return rows.some(({ payload }) => namesPhoto(payload, 'photoSha256', sha256));
}

/**
 * Keeps the bytes of a photo that an entry of the list names. Sent again they stand once.
 * @returns a problem where they are no photo, where their hash is another, or where no entry names them
 */
export async function keepLabelPhoto(
  scope: ListScope,
  sha256: string,
  bytes: Uint8Array,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Result<string>> {
  return keepNamedPhoto(await isNamed(scope, sha256, creatorId), sha256, bytes);
}

/** A photo that an entry of the list names; null where none does, or its bytes have not come yet. */
export async function readLabelPhoto(
  scope: ListScope,
  sha256: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<NamedPhoto | null> {
  return readNamedPhoto(await isNamed(scope, sha256, creatorId), sha256);
}
