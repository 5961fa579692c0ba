import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { readAreas } from './support/areas';
import { faultsOf, importsOf, resolveImport, type SourceFile } from './support/architecture';

const root = fileURLToPath(new URL('..', import.meta.url));
const areas = readAreas(readFileSync(`${root}DEVELOPERS.md`, 'utf8'));

/** The folders whose every source file keeps the table. */
const KEPT = ['lib', 'app', 'prisma', 'seed'];

function sources(): SourceFile[] {
  return KEPT.flatMap((folder) =>
    readdirSync(root + folder, { recursive: true, encoding: 'utf8' })
      .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
      .filter((path) => /\.tsx?$/.test(path) && !path.startsWith('prisma/generated/'))
      .map((path) => ({ path, text: readFileSync(root + path, 'utf8') })),
  );
}

const TOP = ['README.md', 'DEVELOPERS.md', 'package.json', 'tsconfig.json'];
const FOLDERS = ['app', 'prisma', 'lib', 'tests', 'seed'];
const BESIDE = ['next.config.ts', 'proxy.ts', 'instrumentation.ts', 'prisma.config.ts'];
const MADE = ['node_modules', 'next-env.d.ts', 'test-results', 'playwright-report', 'out'];

describe('the project', () => {
  test('every import keeps the table of areas; lib is pure, app computes nothing', () => {
    const files = sources();
    expect(files.length).toBeGreaterThan(20);
    expect(faultsOf(files, areas)).toEqual([]);
  });

  test('every area of the table exists', () => {
    const missing = areas.filter(({ path }) => !existsSync(root + path)).map(({ path }) => path);
    expect(missing).toEqual([]);
  });

  test('every folder and file of lib is an area of the table', () => {
    const named = areas.map(({ path }) => path);
    const present = readdirSync(`${root}lib`, { withFileTypes: true });
    const paths = present.map((entry) => `lib/${entry.name}${entry.isDirectory() ? '/' : ''}`);
    expect(paths.filter((path) => !named.includes(path))).toEqual([]);
  });

  test('the top level holds what it may, and all that it must', () => {
    const present = readdirSync(root).filter(
      (name) => !name.startsWith('.') && !MADE.includes(name) && !name.endsWith('.tsbuildinfo'),
    );
    const allowed = [...TOP, ...FOLDERS, ...BESIDE, 'package-lock.json'];
    expect(present.filter((name) => !allowed.includes(name))).toEqual([]);
    expect([...TOP, ...FOLDERS].filter((name) => !present.includes(name))).toEqual([]);
  });
});

describe('the rules themselves', () => {
  const small = readAreas(
    [
      '| area | owns | may import |',
      '| --- | --- | --- |',
      '| `lib/result.ts` | | – |',
      '| `lib/units/` | | – |',
      '| `lib/foods/` | | units |',
      '| `lib/store/` | | every pure area, the generated client |',
      '| `app/` | | all of lib, `app/_ui/` |',
      '| `app/_ui/` | | units |',
    ].join('\n'),
  );
  const fault = (path: string, text: string): string[] => faultsOf([{ path, text }], small);

  // [file, code, what is wrong with it, or nothing]
  const CASES: [string, string, string?][] = [
    ['lib/foods/a.ts', "import { b } from '#lib/units/b';"],
    ['lib/foods/a.ts', "import { ok } from '#lib/result';"],
    ['lib/foods/a.ts', "import { b } from './b';"],
    ['lib/units/a.ts', "import type { B } from '#lib/foods/b';", 'may not import lib/foods/'],
    ['lib/units/a.ts', "import type { B } from '../foods/b';", 'may not import lib/foods/'],
    ['lib/units/a.ts', "export * from '#lib/foods/b';", 'may not import lib/foods/'],
    ['lib/units/a.ts', "type B = import('#lib/foods/b').B;", 'may not import lib/foods/'],
    ['lib/units/a.ts', "const b = await import('#lib/foods/b');", 'may not import lib/foods/'],
    ['lib/units/a.ts', "import data from '#seed/data';", 'in no area'],
    ['lib/foods/a.ts', "import { C } from '#db/generated/client';", 'generated database client'],
    ['lib/store/a.ts', "import { C } from '#db/generated/client';"],
    [
      'app/page.tsx',
      "import { C } from '../prisma/generated/client';",
      'generated database client',
    ],
    ['app/page.tsx', "import { read } from '#lib/store/read';"],
    ['app/_ui/a.tsx', "import { read } from '#lib/store/read';", 'may not import lib/store/'],
    ['lib/units/a.ts', "import { readFileSync } from 'node:fs';", 'its area is pure'],
    ['lib/units/a.ts', "import { useState } from 'react';", 'its area is pure'],
    ['lib/store/a.ts', "import { readFileSync } from 'node:fs';"],
    ['lib/units/a.ts', 'const now = new Date();', 'reads the clock'],
    ['lib/units/a.ts', 'const then = new Date(0);'],
    ['lib/units/a.ts', 'const now = Date.now();', 'uses Date.now'],
    ['lib/units/a.ts', 'const luck = Math.random();', 'uses Math.random'],
    ['lib/units/a.ts', '// no Math.random() here'],
    ['lib/store/a.ts', 'const now = new Date();'],
    ['app/page.tsx', 'const sum = list.reduce((a, b) => a + b);', 'uses .reduce'],
    ['app/page.tsx', 'const text = <b>{grams.toFixed(1)}</b>;', 'uses .toFixed'],
    ['app/_ui/a.tsx', 'const n = Math.round(kcal);', 'uses Math.round'],
    ['app/_ui/geometry.ts', 'const x = Math.round(width / 2);'],
    ['lib/nowhere/a.ts', "import { b } from './b';", 'in no area of the table'],
  ];

  test.each(CASES)('%s: %s', (path, text, wrong) => {
    const found = fault(path, `\n${text}\n`);
    if (wrong === undefined) expect(found).toEqual([]);
    else expect(found).toEqual([expect.stringMatching(new RegExp(`^${path}:2 .*${wrong}`))]);
  });

  test('a word in the table that is no area is refused', () => {
    const table = '| area | owns | may import |\n| --- | --- | --- |\n| `lib/a/` | | moon |';
    expect(() => readAreas(table)).toThrow('"moon" is no area');
    expect(() => readAreas('no table')).toThrow('no table');
  });

  test('imports are read with their lines and resolved from the file', () => {
    const text = "import a from 'a';\nimport {\n  b,\n} from './b';\nrequire('c');";
    const found = importsOf({ path: 'lib/x/y.ts', text });
    expect(found).toEqual([
      { line: 1, what: 'a' },
      { line: 2, what: './b' },
      { line: 5, what: 'c' },
    ]);
    expect(resolveImport('lib/x/y.ts', '../z/w')).toBe('lib/z/w');
    expect(resolveImport('lib/x/y.ts', '#db/provider')).toBe('prisma/provider');
    expect(resolveImport('lib/x/y.ts', 'zod')).toBeNull();
  });
});
