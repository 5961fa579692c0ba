import { createReadStream, createWriteStream, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { brotliDecompressSync, createBrotliDecompress } from 'node:zlib';
import { untar } from './untar';

/** A browser to launch, and what its environment needs beside ours. */
export interface Browser {
  readonly path: string;
  readonly env: Readonly<Record<string, string>>;
  readonly from: string;
}

const fontConfiguration = (folder: string): string => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${folder}/fonts</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir>${folder}/font-cache</cachedir>
</fontconfig>
`;

/**
 * The Chromium that npm brings (Linux, x64), unpacked once below `cache`. It is unpacked beside
 * its place and renamed into it, so that two runs at once never see half a browser. The package's
 * own unpacking writes to the temporary folder and races between processes.
 */
export async function packedChromium(cache: string): Promise<Browser> {
  const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium');
  const home = join(dirname(entry), '..', '..');
  const { version } = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8')) as {
    version: string;
  };
  const place = join(cache, `chromium-${version}`);
  if (!existsSync(join(place, 'chromium'))) await unpack(join(home, 'bin'), place);
  return {
    path: join(place, 'chromium'),
    env: { LD_LIBRARY_PATH: join(place, 'lib'), FONTCONFIG_FILE: join(place, 'fonts.conf') },
    from: `@sparticuz/chromium ${version}`,
  };
}

async function unpack(packed: string, place: string): Promise<void> {
  const beside = `${place}.${process.pid}`;
  rmSync(beside, { recursive: true, force: true });
  mkdirSync(join(beside, 'font-cache'), { recursive: true });
  for (const name of ['al2023.tar.br', 'fonts.tar.br']) {
    untar(brotliDecompressSync(readFileSync(join(packed, name))), beside);
  }
  writeFileSync(join(beside, 'fonts.conf'), fontConfiguration(place));
  await pipeline(
    createReadStream(join(packed, 'chromium.br')),
    createBrotliDecompress(),
    createWriteStream(join(beside, 'chromium'), { mode: 0o755 }),
  );
  try {
    renameSync(beside, place);
  } catch (error) {
    // Another run was first; its browser is the same.
    rmSync(beside, { recursive: true, force: true });
    if (!existsSync(join(place, 'chromium'))) throw error;
  }
}
