import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** `npm run bench -- NAME` runs `tests/bench/NAME.ts`; without a name it lists them. */
const here = fileURLToPath(new URL('.', import.meta.url));
const PARTS = [
  'run.ts',
  'timing.ts',
  'claims-made.ts',
  'day-made.ts',
  'planner-mip.ts',
  'planner-peers.ts',
  'import-fdc-part.ts',
];
const names = readdirSync(here)
  .filter((file) => file.endsWith('.ts') && !PARTS.includes(file))
  .map((file) => file.slice(0, -'.ts'.length))
  .sort();
const name = process.argv[2];

if (name === undefined || !names.includes(name)) {
  console.error(`Usage: npm run bench -- NAME, where NAME is one of: ${names.join(', ')}`);
  process.exitCode = 1;
} else {
  const bench = (await import(`./${name}.ts`)) as { run: () => Promise<void> | void };
  await bench.run();
}
