import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type * as DoorStart from '../../prisma/setup/door.cjs';

const { startDoor } = createRequire(import.meta.url)(
  '../../prisma/setup/door.cjs',
) as typeof DoorStart;

/** The phone's door: its address by HTTPS, and the certificate of its authority. */
export interface Door {
  readonly url: string;
  readonly authority: string;
}

/** Opens a door at this machine's address in its network; where it has none, on loopback itself. */
export async function openDoor(
  key: DoorStart.DoorKey,
  inner: number,
  port: number,
): Promise<Door & { readonly stop: () => Promise<void> }> {
  const first = await startDoor({ key, inner, port });
  const none = 'said' in first && !first.said.open;
  const door = none ? await startDoor({ key, inner, port, addresses: ['127.0.0.1'] }) : first;
  const url = 'said' in door ? door.said.urls[0] : undefined;
  if ('failed' in door || url === undefined) {
    throw new Error(
      `The phone's door did not open: ${'failed' in door ? door.failed : 'no address'}`,
    );
  }
  return {
    url,
    authority: readFileSync(join(key.folder, 'authority.crt'), 'utf8'),
    stop: door.stop,
  };
}
