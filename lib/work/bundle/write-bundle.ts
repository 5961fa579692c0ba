import { Readable } from 'node:stream';
import { ZipFile } from 'yazl';

/** A file of a bundle; its bytes are asked for when its turn comes. */
export interface BundleEntry {
  /** Path within the zip. */
  readonly name: string;
  readonly bytes: () => Promise<Uint8Array | string>;
  /** False for what is packed already, as a photo. */
  readonly compress?: boolean;
}

/**
 * Files as one zip, written as it is read: one of them is in memory at a time. A file that cannot be read ends the
 * stream with its error, so that nobody takes half a bundle for a whole one.
 * @param at the time that all of them bear
 */
export function bundleStream(entries: readonly BundleEntry[], at: Date): Readable {
  const zip = new ZipFile();
  const written = zip.outputStream as unknown as Readable;
  const out = Readable.from(written as AsyncIterable<Uint8Array>);
  // What is written is ended, not what is read of it: that waits for more before it hears of its end.
  zip.on('error', (error: Error) => written.destroy(error));
  for (const { name, bytes, compress = true } of entries) {
    zip.addReadStreamLazy(name, { mtime: at, compress }, (give) => {
      bytes().then(
        (read) => give(null, Readable.from([typeof read === 'string' ? Buffer.from(read) : read])),
        (error: unknown) => {
          give(error, Readable.from([]));
        },
      );
    });
  }
  zip.end();
  return out;
}
