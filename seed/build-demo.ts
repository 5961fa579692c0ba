import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { episodeFileText, parseEpisodeData } from '#lib/episode/file';
import { demoFile } from '#seed/demo/demo-file';
import { loadSr28 } from '#seed/load-sr28';

/**
 * Writes `seed/demo.episode.json` anew from `seed/demo/` and the reference foods: `tsx seed/build-demo.ts`.
 * Reads no clock: the same sources give the same bytes.
 */
const file = demoFile(loadSr28());
const parsed = parseEpisodeData(file);
if (parsed.ok) {
  const path = fileURLToPath(new URL('./demo.episode.json', import.meta.url));
  writeFileSync(path, episodeFileText(parsed.value));
  console.log(`wrote ${path}`);
} else {
  for (const problem of parsed.problems) console.error(`${problem.path}: ${problem.message}`);
  process.exitCode = 1;
}
