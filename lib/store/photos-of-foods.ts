import 'server-only';
import { v7 as uuid } from 'uuid';
import { failed, ok, type Result } from '#lib/result';
import type { Photo } from '#lib/foods/photo';
import { PHOTO_MIME } from '#lib/foods/photo-kinds';
import { photoName } from '#lib/foods/photo-name';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE } from '#lib/store/load';
import { isPhotoThere, keepPhoto, photoHash, readPhotoBytes } from '#lib/store/photos';

/** A photo as a food's page shows it. */
export interface FoodPhoto {
  readonly id: string;
  readonly rev: number;
  /** The reading of the label that it is evidence for. */
  readonly versionId: string;
  readonly sha256: string;
  readonly name: string;
  /** Bytes. */
  readonly size: number;
  /** False where the file is missing from the folder of photos, or is cut short. */
  readonly there: boolean;
}

/** Photos of one reading at most: a panel, its sides, its list of ingredients. Common practice, no source. */
const MOST = 12;

/** A creator's photos of the readings of a food that are there. */
const ofFood = (foodId: string, creatorId: string) => ({
  creatorId,
  version: { foodId, ...ALIVE, food: ALIVE },
});

/** The photos of a food's readings, in the order in which they were attached. */
export async function readFoodPhotos(
  foodId: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly FoodPhoto[]> {
  const rows = await database().attachment.findMany({
    where: { ...ofFood(foodId, creatorId), ...ALIVE },
    orderBy: { id: 'asc' },
  });
  return Promise.all(rows.map(shown));
}

/** A photo that was taken out of a food's page and can be put back; null if there is none. */
export async function readPhotoTakenOut(
  foodId: string,
  id: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<FoodPhoto | null> {
  const row = await database().attachment.findFirst({
    where: { id, ...ofFood(foodId, creatorId), deletedAt: { not: null } },
  });
  return row && shown(row);
}

async function shown(row: Omit<FoodPhoto, 'there'>): Promise<FoodPhoto> {
  const { id, rev, versionId, sha256, name, size } = row;
  const there = await isPhotoThere(sha256, size);
  return { id, rev, versionId, sha256, name, size, there };
}

/** A photo with its bytes, for showing it whole. */
export interface WholePhoto {
  readonly mime: string;
  readonly name: string;
  /** Null where the file is missing or damaged. */
  readonly bytes: Uint8Array<ArrayBuffer> | null;
}

/**
 * A photo of a food by its hash; null where no row of this creator names it there, whatever stands in the
 * folder.
 */
export async function readPhoto(
  foodId: string,
  sha256: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<WholePhoto | null> {
  const row = await database().attachment.findFirst({
    where: { sha256, ...ofFood(foodId, creatorId), ...ALIVE },
    orderBy: { id: 'asc' },
  });
  if (row === null) return null;
  return { mime: row.mime, name: row.name, bytes: await readPhotoBytes(row.sha256) };
}

/**
 * Keeps a photo's bytes and gives the edit that attaches it to a reading. A photo that the reading has
 * already, and one more than it may have, are refused.
 * @param given the file's name as it was sent
 * @returns null where the reading has it already and only its file was missing: that is there again
 */
export async function photoEdit(
  versionId: string,
  photo: Photo,
  given: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Result<Edit | null>> {
  const sha256 = photoHash(photo.bytes);
  const beside = await database().attachment.findMany({
    where: { versionId, creatorId, ...ALIVE },
    select: { sha256: true },
  });
  if (beside.some((each) => each.sha256 === sha256)) {
    if ((await readPhotoBytes(sha256)) === null) {
      const healed = await keepPhoto(photo.bytes);
      return healed.ok ? ok(null) : healed;
    }
    const message = 'This reading has this very photo already.';
    return failed({ path: 'photo', code: 'there-already', message });
  }
  if (beside.length >= MOST) {
    const message = `A reading may have ${MOST} photos: take one out before you attach another.`;
    return failed({ path: 'photo', code: 'too-many', message });
  }
  const kept = await keepPhoto(photo.bytes);
  if (!kept.ok) return kept;
  const mime = PHOTO_MIME[photo.kind];
  const row = {
    id: uuid(),
    versionId,
    sha256,
    mime,
    name: photoName(given, mime),
    size: photo.bytes.length,
  };
  return ok({ op: 'create', entity: 'Attachment', row });
}
