import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { parseEpisodeFile } from '#lib/episode/file';
import { outputs } from '#lib/sheet/outputs';

const USAGE = `Makes every output of an episode from its file, without a browser or database.

  npm run sheet -- FILE --out DIR [--now INSTANT] [--seed N]

  FILE    an episode file (exported from an episode's page, or written by hand)
  --out   the folder for figures.json, shooting-order.json, risk.json, day-sheet.txt,
          day-sheet.csv, day-sheet.ics, evening-before.txt, shopping.json, shopping.txt,
          shopping.csv and description.txt; made if it is not there
  --now   the clock, as in 2026-12-10T18:00:00Z; the file's own savedAt if left out
  --seed  a whole number for the planner; 1 if left out`;

const instant = z.iso.datetime();
const wholeNumber = z.coerce
  .number()
  .int()
  .min(0)
  .max(2 ** 31 - 1);

/** Runs the command. Returns the exit code: 0 done, 1 the file has faults, 2 the words are off. */
function main(argv: readonly string[]): number {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        out: { type: 'string' },
        now: { type: 'string' },
        seed: { type: 'string' },
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
  const [source, ...more] = positionals;
  if (!source || more.length > 0) return fail(2, 'name one episode file', USAGE);
  if (!values.out) return fail(2, 'name the folder for the outputs with --out', USAGE);
  if (values.now !== undefined && !instant.safeParse(values.now).success) {
    return fail(2, `--now takes a UTC instant such as 2026-12-10T18:00:00Z, not "${values.now}"`);
  }
  const seed = wholeNumber.safeParse(values.seed ?? 1);
  if (!seed.success) return fail(2, `--seed takes a whole number, not "${values.seed}"`);

  let text: string;
  try {
    text = readFileSync(source, 'utf8');
  } catch (error) {
    return fail(
      1,
      `cannot read ${source}: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
  const file = parseEpisodeFile(text);
  if (!file.ok) {
    const count = file.problems.length;
    return fail(
      1,
      `${source} has ${count} ${count === 1 ? 'fault' : 'faults'}; nothing was written:`,
      ...file.problems.map((problem) => `  ${problem.path || '(file)'}: ${problem.message}`),
    );
  }
  const now = values.now ?? file.value.savedAt;
  try {
    mkdirSync(values.out, { recursive: true });
    for (const [name, content] of outputs(file.value, { now, seed: seed.data })) {
      const target = path.join(values.out, name);
      writeFileSync(target, content);
      console.log(target);
    }
  } catch (error) {
    if (!isSystemError(error)) throw error;
    return fail(1, `cannot write into ${values.out}: ${error.message}`);
  }
  return 0;
}

/** A refusal of the file system, in contrast to a fault of ours. */
function isSystemError(error: unknown): error is NodeJS.ErrnoException {
  return error instanceof Error && 'syscall' in error;
}

function fail(code: number, ...lines: readonly string[]): number {
  for (const line of lines) console.error(line);
  return code;
}

process.exitCode = main(process.argv.slice(2));
