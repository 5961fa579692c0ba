import { createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ReadableStream } from 'node:stream/web';
import type { Result } from '#lib/result';
import { openBundle, type OpenBundle } from '#lib/work/bundle/read-bundle';

/** The first bytes of a zip's first file (APPNOTE.TXT 4.3.7). */
const ZIP = [0x50, 0x4b, 0x03, 0x04];

/** Whether a file that somebody chose is a zip, whatever it is called. */
export async function isZip(file: Blob): Promise<boolean> {
  const head = new Uint8Array(await file.slice(0, ZIP.length).arrayBuffer());
  return ZIP.every((byte, at) => head[at] === byte);
}

/**
 * Opens a bundle that was sent, does something with it, and leaves nothing of it behind. It is put on the disk piece by
 * piece, since a zip is read from its end.
 */
export async function withUploadedBundle<T>(
  file: Blob,
  act: (bundle: OpenBundle) => Promise<Result<T>>,
): Promise<Result<T>> {
  const folder = await mkdtemp(join(tmpdir(), 'slate-bundle-'));
  try {
    const path = join(folder, 'sent.zip');
    const stream = Readable.fromWeb(file.stream() as ReadableStream);
    await pipeline(stream, createWriteStream(path, { mode: 0o600 }));
    const opened = await openBundle(path);
    if (!opened.ok) return opened;
    try {
      return await act(opened.value);
    } finally {
      opened.value.close();
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
