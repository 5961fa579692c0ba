import { z } from 'zod';
import { DESCRIPTION_FORMS } from '#lib/episode/publish-schema';
import { LARGEST_PHOTO, PHOTO_MIMES } from '#lib/foods/photo-kinds';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { pathText } from '#lib/episode/file';
import { stableJson } from '#lib/episode/stable-json';
import { LONGEST_REASON } from '#lib/publish/correction/correction-words';

const HISTORY_FORMAT = 'scale-and-slate/history';

const id = z.string().regex(/^[\w-]{1,64}$/, 'must be letters, digits, - and _');
const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'must be a SHA-256, 64 hexadecimal digits');

/**
 * What an episode has been through: its locks (each as a file of its own, named by its hash), the texts that were
 * copied with them, corrections, and the photos of its labels by their hash.
 */
const historySchema = z.strictObject({
  format: z.literal(HISTORY_FORMAT),
  version: z.literal(1),
  locks: z
    .array(
      z.strictObject({
        id,
        seq: z.int().min(1).max(1_000_000),
        at: z.iso.datetime(),
        sha256,
        schemaVersion: z.int().min(0).max(1000),
        engineVersion: z.string().min(1).max(80),
      }),
    )
    .max(2000),
  published: z
    .array(
      z.strictObject({
        lockId: id,
        form: z.enum(DESCRIPTION_FORMS),
        at: z.iso.datetime(),
        text: z.string().max(200_000),
      }),
    )
    .max(5000),
  corrections: z
    .array(
      z.strictObject({
        oldLockId: id,
        newLockId: id,
        reason: z.string().min(1).max(LONGEST_REASON),
        on: z.iso.date(),
      }),
    )
    .max(2000),
  photos: z
    .array(
      z.strictObject({
        /** The reading of a label that it is evidence for, as the episode file names it. */
        versionId: id,
        sha256,
        mime: z.enum(PHOTO_MIMES),
        name: z.string().min(1).max(240),
        size: z.int().min(1).max(LARGEST_PHOTO),
      }),
    )
    .max(2000),
});
export type EpisodeHistory = z.infer<typeof historySchema>;

/** What an episode has been through before anything has. */
export const NO_HISTORY: EpisodeHistory = {
  ...{ format: HISTORY_FORMAT, version: 1 },
  ...{ locks: [], published: [], corrections: [], photos: [] },
};

/** The text of `history.json`: keys in order, a line feed at the end. */
export const historyText = (history: EpisodeHistory): string => stableJson(history);

/**
 * Reads a `history.json`. Every fault is told with its path: what is missing or no such thing, a lock named twice, a
 * text or correction of a lock that is not there.
 * @example parseHistory('{') // failed: path 'history.json'
 */
export function parseHistory(text: string): Result<EpisodeHistory> {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    const message = `is not JSON: ${error instanceof Error ? error.message : String(error)}`;
    return failed({ path: 'history.json', code: 'not-json', message });
  }
  const parsed = historySchema.safeParse(data);
  if (!parsed.success) {
    const problems = parsed.error.issues.map(({ path, code, message }) => ({
      path: `history.json ${pathText(path)}`.trim(),
      code: code ?? 'invalid',
      message,
    }));
    return { ok: false, problems };
  }
  const problems = faultsOf(parsed.data);
  return problems.length > 0 ? { ok: false, problems } : ok(parsed.data);
}

function faultsOf({ locks, published, corrections }: EpisodeHistory): Problem[] {
  const ids = new Set(locks.map((lock) => lock.id));
  const unknown = (path: string, lockId: string): Problem[] => {
    const message = `no lock in this history has the id "${lockId}"`;
    return ids.has(lockId) ? [] : [{ path: `history.json ${path}`, code: 'unknown-id', message }];
  };
  const twice = locks.flatMap((lock, at): Problem[] => {
    const other = locks.findIndex((each) => each.id === lock.id || each.seq === lock.seq);
    const message = `has the id or number of locks[${String(other)}]`;
    return other === at
      ? []
      : [{ path: `history.json locks[${String(at)}]`, code: 'twice', message }];
  });
  return [
    ...twice,
    ...published.flatMap(({ lockId }, at) => unknown(`published[${String(at)}].lockId`, lockId)),
    ...corrections.flatMap(({ oldLockId, newLockId }, at) => [
      ...unknown(`corrections[${String(at)}].oldLockId`, oldLockId),
      ...unknown(`corrections[${String(at)}].newLockId`, newLockId),
    ]),
  ];
}
