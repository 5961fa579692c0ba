import { existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { importFdc, type ImportOutcome } from '#db/import-fdc';
import { closeDatabase } from '#lib/store/client';
import { databaseFile, isPostgresUrl, shownDatabase } from '#lib/store/database-file';
import { DownloadError, KEPT_FAULTS, type Tally } from '#lib/work/fdc/faults';
import type { Progress } from '#lib/work/fdc/progress';

const USAGE = `Imports downloads of USDA FoodData Central: Foundation, SR Legacy and Branded foods.

  npm run import-fdc -- PATH… [--again]

  PATH     a .zip or .json as published, or the folder of tables that a .zip was unpacked to
  --again  reads a download again that was imported to its end before

Killed, it goes on where it was when it is begun again. Pages may be used meanwhile.
Codes: 0 done, 1 a download could not be read to its end, 2 the words are off.`;

async function main(argv: readonly string[]): Promise<number> {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        again: { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h' },
      },
    });
  } catch (error) {
    return fail(2, error instanceof Error ? error.message : String(error), USAGE);
  }
  const { values, positionals } = parsed;
  if (values.help) {
    console.log(USAGE);
    return 0;
  }
  if (positionals.length === 0) return fail(2, 'Name at least one download.', USAGE);
  const database = databaseFile(process.env);
  if (!isPostgresUrl(database) && !existsSync(database)) {
    return fail(
      2,
      `There is no database ${shownDatabase(database)} yet: "npm start" makes it ready.`,
    );
  }
  let code = 0;
  try {
    for (const path of positionals) code = Math.max(code, await one(path, values.again));
  } finally {
    await closeDatabase();
  }
  return code;
}

async function one(path: string, again: boolean): Promise<number> {
  const line = new ProgressLine();
  const begun = performance.now();
  try {
    const outcome = await importFdc(path, {
      at: new Date(),
      again,
      tell: (progress) => line.tell(progress),
    });
    line.end();
    console.log(outcomeText(path, outcome, (performance.now() - begun) / 1000));
    return outcome.kind === 'broken' ? 1 : 0;
  } catch (error) {
    line.end();
    const why = error instanceof Error ? error.message : String(error);
    if (error instanceof DownloadError) return fail(1, why);
    return fail(1, `${path}: the import stopped. ${why}`, AGAIN);
  }
}

const AGAIN =
  'What was finished is in the database; begin the import again and it goes on. If the database is of an ' +
  'older version, "npm start" brings it up to date first.';

/** How far it is, on one line of a terminal or now and then in a log. */
class ProgressLine {
  readonly #terminal = process.stderr.isTTY;
  #saidAt = 0;
  #shown = false;

  tell({ file, bytes, size }: Progress): void {
    const now = performance.now();
    if (now - this.#saidAt < (this.#terminal ? 200 : 10_000)) return;
    this.#saidAt = now;
    const share = size > 0 ? Math.min(100, Math.floor((bytes / size) * 100)) : 100;
    process.stderr.write(
      this.#terminal ? `\r\u001b[2K${file}: ${share} %` : `${file}: ${share} %\n`,
    );
    this.#shown = true;
  }

  end(): void {
    if (this.#terminal && this.#shown) process.stderr.write('\r\u001b[2K');
  }
}

const count = (n: number): string => n.toLocaleString('en-US');
const many = (n: number, one: string, more: string): string =>
  `${count(n)} ${n === 1 ? one : more}`;
/** Names that are told of what was passed over. */
const MOST_NAMES = 30;

function outcomeText(path: string, outcome: ImportOutcome, seconds: number): string {
  const { kind, release, newFoods, newReadings, tally, why } = outcome;
  if (kind === 'before') {
    return `${path} was imported before as ${release}; nothing has changed. --again reads it once more.`;
  }
  return [
    ...(why === null ? [] : [why]),
    `${release}: ${many(tally.foods, 'food', 'foods')} read in ${seconds.toFixed(0)} s; ` +
      `${many(newFoods, 'food', 'foods')} and ${many(newReadings, 'reading', 'readings')} are new.`,
    ...namesText('Kinds of food that are not imported', tally.passedOver),
    ...namesText('Nutrients without a name here, and how many values', tally.unknownNutrients),
    ...faultsText(tally),
  ].join('\n');
}

function namesText(title: string, counts: Readonly<Record<string, number>>): string[] {
  const sorted = Object.entries(counts).sort(([, a], [, b]) => b - a);
  if (sorted.length === 0) return [];
  const shown = sorted.slice(0, MOST_NAMES).map(([name, n]) => `${name} ${count(n)}`);
  const rest = sorted.length - shown.length;
  return [`${title}: ${shown.join('; ')}${rest > 0 ? `; and ${rest} more` : ''}.`];
}

function faultsText({ faults, firstFaults }: Tally): string[] {
  if (faults === 0) return [];
  const first = faults > KEPT_FAULTS ? `, the first ${KEPT_FAULTS} of them` : '';
  return [
    `${many(faults, 'row or value', 'rows or values')} could not be taken as they stand${first}:`,
    ...firstFaults.map(({ file, at, why }) => `  ${file}, ${at}: ${why}`),
  ];
}

function fail(code: number, ...lines: readonly string[]): number {
  for (const line of lines) console.error(line);
  return code;
}

process.exitCode = await main(process.argv.slice(2));
