import 'server-only';
import { randomBytes } from 'node:crypto';
import { v7 as uuid } from 'uuid';
import { sha256Hex } from '#lib/door/secret';
import { isIn } from '#lib/door/session';
import { ok, type Result } from '#lib/result';
import { database } from '#lib/store/client';
import type { Written } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { write } from '#lib/store/write';

/** A phone or second computer that was let in once. */
export interface PairedDevice {
  readonly id: string;
  readonly rev: number;
  readonly name: string;
  readonly pairedAt: Date;
  readonly endedAt: Date | null;
  /** Whether it is in now. */
  readonly isIn: boolean;
}

/** 32 random bytes as base64url; what no client of ours sends is not looked up. */
const TOKEN = /^[A-Za-z0-9_-]{43}$/;
const SHOWN = 50;

/** Whether the secret of a cookie belongs to a device that is in at an instant. */
export async function isLetIn(token: string, at: Date): Promise<boolean> {
  if (!TOKEN.test(token)) return false;
  const rows = await database().pairedDevice.findMany({ where: { tokenHash: sha256Hex(token) } });
  return rows.some((row) => isIn(row, at));
}

/** The devices that were let in last, the newest first. */
export async function readPairedDevices(at: Date): Promise<readonly PairedDevice[]> {
  const rows = await database().pairedDevice.findMany({
    where: { creatorId: DEFAULT_CREATOR_ID },
    orderBy: [{ pairedAt: 'desc' }, { id: 'desc' }],
    take: SHOWN,
  });
  return rows.map((row) => ({
    id: row.id,
    rev: row.rev,
    name: row.name,
    pairedAt: row.pairedAt,
    endedAt: row.endedAt ?? row.deletedAt,
    isIn: isIn(row, at),
  }));
}

/** Lets a device in. Its secret is returned for its cookie, and only a hash of it is kept. */
export async function letIn(name: string, at: Date): Promise<Result<string>> {
  const token = randomBytes(32).toString('base64url');
  const row = { id: uuid(), name, tokenHash: sha256Hex(token), pairedAt: at, endedAt: null };
  const written = await write({
    actor: DEFAULT_CREATOR_ID,
    label: `Let in: ${name}`,
    at,
    edits: [{ op: 'create', entity: 'PairedDevice', row }],
  });
  return written.ok ? ok(token) : written;
}

/** Ends a device's session, for good: see `isIn`. */
export function sendAway(
  device: Pick<PairedDevice, 'id' | 'rev' | 'name'>,
  at: Date,
): Promise<Result<Written>> {
  const { id, rev, name } = device;
  return write({
    actor: DEFAULT_CREATOR_ID,
    label: `Send away: ${name}`,
    at,
    edits: [{ op: 'update', entity: 'PairedDevice', id, rev, patch: { endedAt: at } }],
  });
}
