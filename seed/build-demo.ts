import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { episodeFileText, parseEpisodeData } from '#lib/episode/file';
import { stableJson } from '#lib/episode/stable-json';
import { foodSchema } from '#lib/foods/food';
import { demoFile } from '#seed/demo/demo-file';
import { UNCHECKED_LABELS } from '#seed/demo/label-foods';
import { loadSr28 } from '#seed/load-sr28';

/**
 * Writes `seed/demo.episode.json`, and `seed/demo.foods.json` with labels that no dish uses, anew from `seed/demo/` and the reference foods: `tsx seed/build-demo.ts`.
 * Reads no clock: the same sources give the same bytes.
 */
const file = demoFile(loadSr28());
const parsed = parseEpisodeData(file);
if (parsed.ok) {
  const path = fileURLToPath(new URL('./demo.episode.json', import.meta.url));
  writeFileSync(path, episodeFileText(parsed.value));
  console.log(`wrote ${path}`);
  const foods = fileURLToPath(new URL('./demo.foods.json', import.meta.url));
  writeFileSync(foods, stableJson(z.array(foodSchema).parse(UNCHECKED_LABELS)));
  console.log(`wrote ${foods}`);
} else {
  for (const problem of parsed.problems) console.error(`${problem.path}: ${problem.message}`);
  process.exitCode = 1;
}
