import { fdcFood, type FdcFood } from '#lib/foods/fdc-food';
import type { FdcRecord } from '#lib/foods/fdc-record';
import { Counter } from '#lib/work/fdc/faults';
import { recordOf } from '#lib/work/fdc/json-record';
import type { Download } from '#lib/work/fdc/open-download';
import type { Tell } from '#lib/work/fdc/progress';
import { readJsonFoods } from '#lib/work/fdc/read-json';
import { keepMeta, readMeta, type Stage } from '#lib/work/fdc/stage';
import { countFoods, stagedRecords } from '#lib/work/fdc/stage-records';
import { stageTables } from '#lib/work/fdc/stage-tables';

/** Foods that go into the store in one transaction: short enough for the pages to write between two. */
export const FOODS_AT_ONCE = 400;

/** Some foods of a download; `done` is called once they are in the store. */
export interface Batch {
  readonly foods: readonly FdcFood[];
  readonly done: () => void;
}

export interface Reading {
  readonly counter: Counter;
  readonly batches: AsyncGenerator<Batch>;
}

/**
 * The foods of a download in batches. Tables go side by side into `stage` first, which remembers how far they
 * came; a JSON file is read straight through, and from its beginning again after a kill.
 */
export function readDownload(download: Download, stage: Stage | null, tell: Tell): Reading {
  const counter = new Counter(stage ? (readMeta(stage).tally ?? undefined) : undefined);
  const batches =
    download.kind === 'csv' && stage
      ? fromTables(download, stage, counter, tell)
      : fromJson(download, counter, tell);
  return { counter, batches };
}

async function* fromTables(
  download: Download,
  stage: Stage,
  counter: Counter,
  tell: Tell,
): AsyncGenerator<Batch> {
  await stageTables(download, stage, counter, tell);
  const { left, all } = countFoods(stage);
  let done = all - left;
  for (const records of stagedRecords(stage, FOODS_AT_ONCE)) {
    const foods = foodsOf(records, 'food.csv', counter);
    const last = records.at(-1)?.fdcId ?? 0;
    yield {
      foods,
      done: () => {
        counter.addFoods(foods.length);
        keepMeta(stage, { lastFood: last, tally: counter.tally });
        done += records.length;
        tell({ file: 'foods into the database', bytes: done, size: all });
      },
    };
  }
}

async function* fromJson(download: Download, counter: Counter, tell: Tell): AsyncGenerator<Batch> {
  const [file] = download.files.values();
  if (!file) return;
  let records: FdcRecord[] = [];
  const batch = (): Batch => {
    const foods = foodsOf(records, file.name, counter);
    records = [];
    return { foods, done: () => counter.addFoods(foods.length) };
  };
  try {
    for await (const entry of readJsonFoods(file, tell)) {
      const record = recordOf(entry, file.name, counter);
      if (record) records.push(record);
      if (records.length >= FOODS_AT_ONCE) yield batch();
    }
  } catch (error) {
    // What was whole before the fault is kept.
    if (records.length > 0) yield batch();
    throw error;
  }
  if (records.length > 0) yield batch();
}

function foodsOf(records: readonly FdcRecord[], file: string, counter: Counter): FdcFood[] {
  return records.flatMap((record) => {
    const read = fdcFood(record);
    if ('refused' in read) {
      counter.fault(file, `food ${record.fdcId}`, read.refused);
      return [];
    }
    for (const why of read.faults) counter.fault(file, `food ${record.fdcId}`, why);
    return [read];
  });
}
