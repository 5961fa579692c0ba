import { createHash } from 'node:crypto';
import { createReadStream, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { databaseFile, isPostgresUrl, projectRoot } from '#lib/store/database-file';
import { fdcReleaseOf, finishFdcRelease, writeFdcFoods } from '#lib/store/write-fdc';
import { readDownload } from '#lib/work/fdc/batches';
import { DownloadError, type Tally } from '#lib/work/fdc/faults';
import { openDownload, type Download } from '#lib/work/fdc/open-download';
import type { Tell } from '#lib/work/fdc/progress';
import { closeStage, dropStage, openStage } from '#lib/work/fdc/stage';

export interface ImportOptions {
  readonly at: Date;
  readonly tell: Tell;
  /** Reads a download again that was imported to its end before. */
  readonly again?: boolean;
}

/** What came of an import. */
export interface ImportOutcome {
  /** `before`: just these bytes were imported to their end before; `broken`: the download ends too early. */
  readonly kind: 'done' | 'before' | 'broken';
  readonly release: string;
  readonly newFoods: number;
  readonly newReadings: number;
  readonly tally: Tally;
  /** Why it could not be read to its end, in words. */
  readonly why: string | null;
}

const NO_TALLY: Tally = {
  foods: 0,
  rows: 0,
  faults: 0,
  firstFaults: [],
  unknownNutrients: {},
  passedOver: {},
};

/**
 * Imports a download of FoodData Central into the database that `SLATE_DATABASE` names: straight through, some
 * hundred foods to a transaction, in memory that does not grow with the download. Killed and begun again it goes
 * on; done again it changes nothing. Throws a `DownloadError` where nothing can be read at all.
 */
export async function importFdc(path: string, options: ImportOptions): Promise<ImportOutcome> {
  const { at, tell, again = false } = options;
  const download = await openDownload(path);
  try {
    const sha256 = await fingerprint(download, tell);
    const release = releaseName(path);
    const before = again ? null : await fdcReleaseOf(sha256);
    if (before) {
      const tally = { ...NO_TALLY, foods: before.foodCount };
      return {
        kind: 'before',
        release: before.release,
        newFoods: 0,
        newReadings: 0,
        tally,
        why: null,
      };
    }
    return await imported(download, { sha256, release, at, tell });
  } finally {
    download.close();
  }
}

async function imported(
  download: Download,
  { sha256, release, at, tell }: { sha256: string; release: string; at: Date; tell: Tell },
): Promise<ImportOutcome> {
  const stage = download.kind === 'csv' ? openStage(stageFile(sha256)) : null;
  const { counter, batches } = readDownload(download, stage, tell);
  let [newFoods, newReadings] = [0, 0];
  const outcome = (kind: 'done' | 'broken', why: string | null): ImportOutcome => {
    return { kind, release, newFoods, newReadings, tally: counter.tally, why };
  };
  try {
    for await (const { foods, done } of batches) {
      const written = await writeFdcFoods(foods, at);
      newFoods += written.newFoods;
      newReadings += written.newReadings;
      done();
    }
    await finishFdcRelease({ release, sha256, foodCount: counter.tally.foods, at });
    if (stage) dropStage(stage);
    return outcome('done', null);
  } catch (error) {
    if (!(error instanceof DownloadError)) throw error;
    // The same bytes would end in the same place: there is nothing to go on with.
    if (stage) dropStage(stage);
    if (counter.tally.foods === 0) throw error;
    // What there was of it is kept and found; it is said to be a part.
    const part = {
      release: `${release.slice(0, 24)}, broken off`,
      sha256: `part ${sha256.slice(0, 58)}`,
    };
    await finishFdcRelease({ ...part, foodCount: counter.tally.foods, at });
    return outcome('broken', error.message);
  } finally {
    if (stage) closeStage(stage);
  }
}

/** SHA-256 of a download's bytes, in the order of its files: tells it from every other. */
async function fingerprint(download: Download, tell: Tell): Promise<string> {
  const hash = createHash('sha256');
  for (const path of download.sources) {
    const size = statSync(path).size;
    let bytes = 0;
    hash.update(`${basename(path)} ${size}\n`);
    for await (const chunk of createReadStream(path) as AsyncIterable<Buffer>) {
      hash.update(chunk);
      bytes += chunk.length;
      tell({ file: `looking at ${basename(path)}`, bytes, size });
    }
  }
  return hash.digest('hex');
}

/** Where the tables of a download lie side by side meanwhile: beside the database, which has room for them. */
function stageFile(sha256: string): string {
  const database = databaseFile(process.env);
  const folder = isPostgresUrl(database) ? join(projectRoot(), '.data') : dirname(database);
  return join(folder, 'imports', `${sha256.slice(0, 32)}.db`);
}

/**
 * A download's own name without what all have in common.
 * `releaseName('FoodData_Central_branded_food_csv_2025-04-24.zip')` → `'branded_food_csv_2025-04-24'`.
 */
export function releaseName(path: string): string {
  const name = basename(path).replace(/\.(?:zip|json|csv)$/i, '');
  return (name.replace(/^FoodData_Central_/i, '') || 'download').slice(0, 40);
}
