import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { parseEpisodeFile } from '#lib/episode/file';
import { foodSchema, type Food } from '#lib/foods/food';
import { SR28_RELEASE, SR28_SOURCE } from '#lib/foods/read-sr28';
import type { Result } from '#lib/result';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { DEFAULT_KITCHEN } from '#lib/store/default-kitchen';
import { importEpisodeFile } from '#lib/store/import-file';
import { importFoods } from '#lib/store/import-foods';
import { ImportIds } from '#lib/store/import-ids';
import { kitchenEdits } from '#lib/store/import-kitchen';
import { write } from '#lib/store/write';
import { isReleaseLoaded, writeReference } from '#lib/store/write-reference';

export interface FillOptions {
  readonly demoFile: string;
  /** Labels beside the demo, of foods that no dish of it uses; they come with it. */
  readonly foodsFile?: string;
  readonly at: Date;
  /** The zone of a first kitchen. */
  readonly zone: string;
  readonly loadFoods: () => Promise<readonly Food[]>;
  readonly say: (line: string) => void;
}

/**
 * Puts into the migrated database what it must hold: the creator, the reference foods, the demo if it never
 * had an episode, and a kitchen. What is there is left as it is. Throws a sentence that says what to do.
 */
export async function fillDatabase(options: FillOptions): Promise<void> {
  const { say, at } = options;
  if ((await database().creator.findUnique({ where: { id: DEFAULT_CREATOR_ID } })) === null) {
    const row = { id: DEFAULT_CREATOR_ID, name: '' };
    const edits = [{ op: 'create', entity: 'Creator', row } as const];
    orThrow(await write({ actor: 'prepare', label: 'Begin', at, edits }), AGAIN);
  }
  if (!(await isReleaseLoaded(SR28_SOURCE, SR28_RELEASE))) {
    say('Loading the reference foods …');
    const foods = await options.loadFoods();
    const release = { source: SR28_SOURCE, release: SR28_RELEASE, at };
    orThrow(await writeReference(foods, release), AGAIN);
  }
  // Removed episodes count too: a demo that a person has thrown away does not come back.
  if (existsSync(options.demoFile) && (await database().episode.count()) === 0) {
    const remedy = `Restore ${options.demoFile} from version control.`;
    const demo = orThrow(parseEpisodeFile(readFileSync(options.demoFile, 'utf8')), remedy);
    orThrow(await importEpisodeFile(demo, at), remedy);
    if (options.foodsFile) await addLabels(options.foodsFile, at);
    say(`Added the demo "${demo.episode.title}".`);
  }
  if ((await database().kitchen.count()) === 0) {
    const edits = kitchenEdits({ ...DEFAULT_KITCHEN, zone: options.zone });
    orThrow(await write({ actor: 'prepare', label: 'Begin', at, edits }), AGAIN);
  }
}

async function addLabels(path: string, at: Date): Promise<void> {
  const foods = z.array(foodSchema).parse(JSON.parse(readFileSync(path, 'utf8')));
  const edits = await importFoods(foods, at, DEFAULT_CREATOR_ID, new ImportIds());
  orThrow(await write({ actor: 'prepare', label: 'Labels of the pantry', at, edits }), AGAIN);
}

const AGAIN =
  'Start again: what was not finished is not there. If it stays so, set SLATE_DATABASE to another database.';

function orThrow<T>(result: Result<T>, remedy: string): T {
  if (result.ok) return result.value;
  const faults = result.problems.map(({ path, message }) => `  ${path}: ${message}`);
  throw new Error([...faults.slice(0, 20), remedy].join('\n'));
}
