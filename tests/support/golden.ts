import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

const ROOT = fileURLToPath(new URL('../goldens', import.meta.url));

/**
 * Holds a text against a reviewed one in `tests/goldens/`. Outside CI a missing golden is written, to be
 * read by a person before it is committed; in CI a missing golden fails. `UPDATE_GOLDENS=1` writes anew.
 */
export function expectGolden(name: string, text: string): void {
  const file = path.join(ROOT, name);
  const missing = !existsSync(file);
  if (process.env.UPDATE_GOLDENS === '1' || (missing && !process.env.CI)) {
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, text);
    return;
  }
  if (missing)
    throw new Error(`no golden ${name}: run the tests outside CI, read it and commit it`);
  expect(text).toBe(readFileSync(file, 'utf8'));
}
