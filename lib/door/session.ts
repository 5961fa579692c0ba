/** The `__Host-` prefix makes browsers keep it to this very host, path `/`, and HTTPS (RFC 6265bis, from memory). */
export const SESSION_COOKIE = '__Host-slate';

/** Sent by the door with every request that it passes on; what a client sends under this name is dropped. */
export const DOOR_HEADER = 'x-slate-door';

/** A device that was let in stays in so long, unless it is sent away. Ours, no source. */
export const SESSION_DAYS = 90;

const DAY_MS = 86_400_000;

/** What of a device's row says whether it is in. */
export interface SessionRow {
  readonly rev: number;
  readonly pairedAt: Date;
  readonly endedAt: Date | null;
  readonly deletedAt: Date | null;
}

/**
 * Whether a device is in. Its row must stand as it was first written (revision 1): whatever happened to it
 * since, and whoever took that back, it never lets in again. So to undo a sending away, or to undo the undoing
 * of a pairing, brings no session back to life.
 */
export function isIn(row: SessionRow, at: Date): boolean {
  const untouched = row.rev === 1 && row.endedAt === null && row.deletedAt === null;
  return untouched && at < sessionEnd(row.pairedAt) && row.pairedAt <= at;
}

/** When a device that was let in at an instant is out by itself. */
export function sessionEnd(pairedAt: Date): Date {
  return new Date(pairedAt.getTime() + SESSION_DAYS * DAY_MS);
}
