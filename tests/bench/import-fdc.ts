import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { applyMigrations } from '#db/migrate';
import { migrationsFolder } from '#db/provider';
import { writeMadeTables } from '../support/made-fdc/write-tables';
import type { SideResult } from './import-fdc-part';
import { searchMillions } from './import-fdc-search';

const ROUNDS = 2;
/** What the import may take at most, as a multiple of the bare way. */
const MOST_TIMES = 3;

/**
 * Imports made-up products in the published layout, beside the same tables parsed and the same rows inserted by
 * better-sqlite3 alone, in turns, each in a process of its own; then searches among millions of made-up foods.
 * `--foods N` (20,000) of the import, `--search N` (2,000,000; 0 leaves it out) of the search.
 */
export async function run(): Promise<void> {
  const { values } = parseArgs({
    args: process.argv.slice(3),
    options: {
      foods: { type: 'string', default: '20000' },
      search: { type: 'string', default: '2000000' },
    },
  });
  const folder = mkdtempSync(join(tmpdir(), 'slate-bench-fdc-'));
  try {
    await compared(folder, Number(values.foods));
    if (Number(values.search) > 0) await searchMillions(folder, Number(values.search));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function compared(folder: string, foods: number): Promise<void> {
  const tables = join(folder, 'tables');
  const rows = await writeMadeTables(tables, foods);
  const sides: Record<'ours' | 'bare', SideResult[]> = { ours: [], bare: [] };
  for (let round = 0; round < ROUNDS; round += 1) {
    const filled = emptyDatabase(folder, `ours-${round}`);
    sides.ours.push(side('ours', filled, [tables]));
    const empty = emptyDatabase(folder, `bare-${round}`);
    sides.bare.push(side('bare', empty, [tables, filled, empty]));
    if (round === 0) {
      const size = (statSync(filled).size / 1e6).toFixed(0);
      console.info(
        `${foods} foods, ${rows} rows of tables, a database of ${size} MB, ${ROUNDS} rounds`,
      );
    }
  }
  const least = (results: readonly SideResult[]) =>
    Math.min(...results.map(({ seconds }) => seconds));
  const shown = (results: readonly SideResult[]) => ({
    'least s': least(results).toFixed(1),
    'cpu s': Math.min(...results.map(({ cpuSeconds }) => cpuSeconds)).toFixed(1),
    'rows a second': Math.round(rows / least(results)),
    'peak MB': Math.round(Math.max(...results.map(({ peakMb }) => peakMb))),
  });
  console.table({
    import: shown(sides.ours),
    'csv-parse and better-sqlite3 alone': shown(sides.bare),
  });
  const cpu = (results: readonly SideResult[]) =>
    Math.min(...results.map(({ cpuSeconds }) => cpuSeconds));
  const byClock = least(sides.ours) / least(sides.bare);
  const byWork = cpu(sides.ours) / cpu(sides.bare);
  console.info(
    `the import takes ${byClock.toFixed(2)} times as long by the clock and ${byWork.toFixed(2)} times by what ` +
      `the processes work, which counts where others work on the machine; at most ${MOST_TIMES} are allowed`,
  );
  if (Math.min(byClock, byWork) > MOST_TIMES) process.exitCode = 1;
}

function emptyDatabase(folder: string, name: string): string {
  const file = join(folder, `${name}.db`);
  applyMigrations(file, migrationsFolder('sqlite'));
  return file;
}

function side(name: 'ours' | 'bare', database: string, args: readonly string[]): SideResult {
  const part = fileURLToPath(new URL('./import-fdc-part.ts', import.meta.url));
  const out = execFileSync(
    process.execPath,
    ['--conditions=react-server', '--import', 'tsx', part, name, ...args],
    { encoding: 'utf8', env: { ...process.env, SLATE_DATABASE: database } },
  );
  return JSON.parse(out.trim().split('\n').at(-1) ?? '') as SideResult;
}
