import 'server-only';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { sameSecret, sha256Hex } from '#lib/door/secret';

const state = z.strictObject({
  run: z.string(),
  urls: z.array(z.url({ protocol: /^https$/ })).min(1),
  fingerprint: z.string().regex(/^(?:[0-9A-F]{2}:){31}[0-9A-F]{2}$/),
  until: z.iso.datetime(),
});

/** The phone's door as it stands open: its addresses, and how its authority is recognised. */
export interface OpenDoor {
  readonly urls: readonly string[];
  /** SHA-256 of the authority's certificate. */
  readonly fingerprint: string;
  /** When the authority's time is over. */
  readonly until: Date;
}

/** Whether a request's door header is that of this run: it came through the door, over HTTPS. */
export function isFromDoor(header: string | null): boolean {
  const { SLATE_DOOR_SECRET: secret = '' } = process.env;
  return header !== null && sameSecret(header, secret);
}

/** The door of this run, or null where none is open. What an earlier run left behind is not believed. */
export async function readOpenDoor(): Promise<OpenDoor | null> {
  const { SLATE_DOOR_SECRET: secret = '' } = process.env;
  const text = secret === '' ? null : await ofFolder('open.json');
  if (text === null) return null;
  try {
    const { run, urls, fingerprint, until } = state.parse(JSON.parse(text));
    return run === sha256Hex(secret) ? { urls, fingerprint, until: new Date(until) } : null;
  } catch {
    return null;
  }
}

/** The authority's certificate as phones take it (DER), or null where none was made. It holds no secret. */
export async function readAuthority(): Promise<Uint8Array<ArrayBuffer> | null> {
  const pem = await ofFolder('authority.crt');
  const base64 = /-----BEGIN CERTIFICATE-----([^-]+)-----END CERTIFICATE-----/.exec(pem ?? '')?.[1];
  return base64 === undefined ? null : new Uint8Array(Buffer.from(base64, 'base64'));
}

async function ofFolder(name: string): Promise<string | null> {
  const { SLATE_DOOR_FOLDER: folder = '' } = process.env;
  if (folder === '') return null;
  try {
    return await readFile(join(folder, name), 'utf8');
  } catch {
    return null;
  }
}
