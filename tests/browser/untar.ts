import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const BLOCK = 512;

const field = (block: Buffer, from: number, length: number): string =>
  block
    .subarray(from, from + length)
    .toString('utf8')
    .replace(/\0.*$/s, '');

/**
 * Unpacks the plain files of a tar archive (POSIX.1-2017 pax, "ustar Interchange Format": name at
 * 0, mode at 100, size in octal at 124, type at 156, prefix at 345) below a folder.
 */
export function untar(archive: Buffer, into: string): void {
  for (let at = 0; at + BLOCK <= archive.length;) {
    const head = archive.subarray(at, at + BLOCK);
    const name = join(field(head, 345, 155), field(head, 0, 100));
    const size = Number.parseInt(field(head, 124, 12), 8) || 0;
    const type = field(head, 156, 1);
    at += BLOCK;
    if ((type === '' || type === '0') && field(head, 0, 100) !== '') {
      const file = join(into, name);
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, archive.subarray(at, at + size), { mode: 0o755 });
    }
    at += Math.ceil(size / BLOCK) * BLOCK;
  }
}
