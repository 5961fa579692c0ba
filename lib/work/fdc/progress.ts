import { Transform, type Readable } from 'node:stream';
import type { DownloadFile } from '#lib/work/fdc/open-download';
import { DownloadError } from '#lib/work/fdc/faults';

/** How far a file has been read. */
export interface Progress {
  readonly file: string;
  readonly bytes: number;
  readonly size: number;
}
export type Tell = (progress: Progress) => void;

/** The bytes of a file, told as they go by. A fault of the zip comes out as a `DownloadError`. */
export async function watched(file: DownloadFile, tell: Tell): Promise<Readable> {
  const source = await file.open();
  let bytes = 0;
  const counted = new Transform({
    transform(chunk: Buffer, _encoding, done) {
      bytes += chunk.length;
      try {
        tell({ file: file.name, bytes, size: file.size });
        done(null, chunk);
      } catch (error) {
        done(error instanceof Error ? error : new Error(String(error)));
      }
    },
  });
  source.on('error', (error) => {
    counted.destroy(
      new DownloadError(
        `${file.name} could not be read to its end (${error.message}); ${bytes} of ${file.size} bytes were.`,
      ),
    );
  });
  counted.on('close', () => source.destroy());
  return source.pipe(counted);
}
