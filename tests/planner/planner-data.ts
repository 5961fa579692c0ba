import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Where the published sets lie beside the project; they are not part of it. */
export const DATA = fileURLToPath(new URL('../../../shared/planner-data/', import.meta.url));

/** One instance with what is known of it: its least value, that there is none, or the bounds published. */
export interface Instance {
  readonly set: string;
  readonly name: string;
  readonly path: string;
  readonly known: number | 'infeasible' | { readonly lower: number; readonly upper: number };
}

/** The sets and where their tables of reference stand. */
const SETS: readonly { readonly set: string; readonly folder: string; readonly table: string }[] = [
  { set: 'j30', folder: 'j30', table: 'optimum.csv' },
  { set: 'j60', folder: 'j60', table: 'bounds.csv' },
  { set: 'sm_j10', folder: 'rcpsp-max/sm_j10', table: 'reference.csv' },
  { set: 'sm_j20', folder: 'rcpsp-max/sm_j20', table: 'reference.csv' },
  { set: 'ubo10', folder: 'rcpsp-max/ubo10', table: 'reference.csv' },
  { set: 'jobshop', folder: 'jobshop', table: 'optimum.csv' },
  { set: 'rcpsp-wet', folder: 'rcpsp-wet', table: 'reference.csv' },
  { set: 'days', folder: 'synthetic-days', table: 'reference.csv' },
];

/**
 * Where the table beside the set cannot be right: it says that 227 is least, but a plan of 224 keeps every rule,
 * and CP-SAT 9.15 proves 224 from a reading of the file of its own.
 */
const CORRECTED: Readonly<Record<string, number>> = { 'j60_19_6-wet.dzn': 224 };

/** All instances below `root` that stand in a table, in the order of their names; empty if it is absent. */
export function instancesIn(root: string): Instance[] {
  return SETS.flatMap(({ set, folder, table }) => {
    const tablePath = `${root}/${folder}/${table}`;
    if (!existsSync(tablePath)) return [];
    const files = readdirSync(`${root}/${folder}`);
    const [head = '', ...rows] = readFileSync(tablePath, 'utf8').trim().split(/\r?\n/);
    const columns = head.split(',');
    return rows
      .map((row) => {
        const cells = row.split(',');
        const cell = (name: string): string => cells[columns.indexOf(name)] ?? '';
        const name = cells[0] ?? '';
        const file = files.find((one) => one === name || one.replace(/\.[^.]+$/, '') === name);
        if (file === undefined) return null;
        const path = `${root}/${folder}/${file}`;
        const lower = Number(cell('lower') || cell('optimum'));
        const upper = Number(cell('upper') || cell('optimum'));
        const one = CORRECTED[name] ?? (lower === upper ? lower : { lower, upper });
        const known = cell('status') === 'infeasible' ? 'infeasible' : one;
        return { set, name, path, known } as const;
      })
      .filter((instance) => instance !== null)
      .sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
  });
}

/** Every nth of a set, so that all kinds of it are met. */
export function sampleOf(
  instances: readonly Instance[],
  set: string,
  count: number,
): readonly Instance[] {
  const all = instances.filter((instance) => instance.set === set);
  const step = Math.max(1, all.length / count);
  return Array.from({ length: Math.min(count, all.length) }, (_, k) => all[Math.floor(k * step)])
    .filter((instance) => instance !== undefined)
    .slice(0, count);
}
