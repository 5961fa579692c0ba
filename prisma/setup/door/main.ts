import { rmSync } from 'node:fs';
import { hostname, networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { localName, urlOf } from '#lib/door/host';
import { homeAddresses } from '#lib/door/private-address';
import { sha256Hex } from '#lib/door/secret';
import { fingerprint, keptAuthority, writePrivate } from './authority';
import { makeLeaf } from './leaf';
import { openDoor } from './listen';

/**
 * The phone's door: a program of its own that the start command begins and ends. It is told by its environment
 * where the program listens, on which port to open and in which folder to keep the authority, says in one
 * message whether it is open, and ends when whoever began it does.
 */
interface Said {
  readonly open: boolean;
  readonly urls: readonly string[];
  readonly made: boolean;
}

function fromEnv(name: string): string {
  const value = process.env[name];
  if (value === undefined || value === '') throw new Error(`${name} is not set.`);
  return value;
}

/** The addresses of this machine's home network, or those that a test names. */
function addresses(): string[] {
  const named = process.env.SLATE_DOOR_ADDRESSES;
  if (named !== undefined) return named.split(',').filter((each) => each !== '');
  const all = Object.entries(networkInterfaces()).flatMap(([interfaceName, list = []]) =>
    list.map(({ address, internal }) => ({ interfaceName, address, internal })),
  );
  return homeAddresses(all);
}

async function open(): Promise<Said> {
  const folder = fromEnv('SLATE_DOOR_FOLDER');
  const secret = fromEnv('SLATE_DOOR_SECRET');
  const state = join(folder, 'open.json');
  const found = addresses();
  if (found.length === 0) return { open: false, urls: [], made: false };
  const local = localName(hostname());
  const names = local === null ? found : [...found, local];
  const now = new Date();
  const { authority, made } = await keptAuthority(folder, local ?? 'this computer', now);
  const leaf = await makeLeaf(authority, names, now);
  const inner = Number(fromEnv('SLATE_DOOR_INNER'));
  const door = await openDoor(found, Number(fromEnv('SLATE_DOOR_PORT')), leaf, {
    inner,
    secret,
    names,
  });
  const urls = names.map((name) => urlOf(name, door.port));
  const told = {
    run: sha256Hex(secret),
    urls,
    fingerprint: await fingerprint(authority.certificate),
    until: authority.certificate.notAfter.toISOString(),
  };
  writePrivate(state, JSON.stringify(told));
  const end = () => {
    rmSync(state, { force: true });
    process.exit(0);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP', 'disconnect'] as const) {
    process.on(signal, end);
  }
  return { open: true, urls, made };
}

const said = await open();
process.send?.(said, undefined, undefined, () => {
  if (!said.open) process.exit(0);
});
