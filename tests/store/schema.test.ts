import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { generateClient } from '#db/generate';
import { PRISMA_FOLDER, PROVIDERS, providerOf, schemaText, type Provider } from '#db/provider';
import { columnsOf, ENTITY_NAMES } from '#lib/store/rows';

/** Model → scalar columns, read from the schema's text. */
function modelsOf(provider: Provider): Map<string, string[]> {
  const models = new Map<string, string[]>();
  const scalar = /^ {2}(\w+)\s+(String|Int|Float|Boolean|DateTime|Json|Bytes)\??(\s|$)/gm;
  for (const [, name, body] of schemaText(provider).matchAll(/^model (\w+) \{([\s\S]*?)^\}/gm)) {
    if (!name) continue;
    models.set(
      name,
      [...(body ?? '').matchAll(scalar)].map(([, column]) => column ?? ''),
    );
  }
  return models;
}

const COMMON = ['id', 'creatorId', 'rev', 'deletedAt'];

describe('the generated client', () => {
  // Apart from the one in use, which other tests are reading meanwhile.
  let scratch = '';
  beforeAll(async () => {
    scratch = mkdtempSync(join(tmpdir(), 'slate-client-'));
    await Promise.all(
      PROVIDERS.map((provider) => generateClient(provider, join(scratch, '.schema'))),
    );
  });
  afterAll(() => rmSync(scratch, { recursive: true, force: true }));

  it.each(PROVIDERS)('of %s has every model', (provider) => {
    const folder = join(scratch, 'generated', provider);
    for (const model of modelsOf(provider).keys()) {
      expect(existsSync(join(folder, 'models', `${model}.ts`)), model).toBe(true);
    }
    expect(readFileSync(join(folder, 'client.ts'), 'utf8')).toContain('type Episode =');
  });

  it('of SQLite has Episode at run time', async () => {
    const { Prisma } = await import('#db/generated/sqlite/client');
    expect(Prisma.ModelName.Episode).toBe('Episode');
    expect(Prisma.EpisodeScalarFieldEnum.rateNum).toBe('rateNum');
    expect(Object.keys(Prisma.ModelName).sort()).toEqual([...modelsOf('sqlite').keys()].sort());
  });
});

describe('the models', () => {
  const models = modelsOf('sqlite');

  it('are the same for both providers', () => {
    expect(modelsOf('postgresql')).toEqual(models);
    expect(models.size).toBeGreaterThan(40);
  });

  it('use nothing that only one of the two databases can do', () => {
    const text = readFileSync(join(PRISMA_FOLDER, 'models.prisma'), 'utf8');
    expect(text).not.toMatch(/@db\.|\bDecimal\b|\bBigInt\b|^enum /m);
    // Scalar lists: a list of a type that is no model.
    for (const [, type] of text.matchAll(/^ {2}\w+\s+(\w+)\[\]/gm)) {
      expect(models.has(type ?? ''), type).toBe(true);
    }
  });

  it('have an id, a creator, a revision and a deletion mark, but for the journal', () => {
    for (const [name, columns] of models) {
      if (name !== 'Change') expect(columns.slice(0, 4), name).toEqual(COMMON);
    }
  });

  it('have the columns that the funnel checks, table by table', () => {
    const checked = new Set<string>(ENTITY_NAMES);
    expect([...models.keys()].filter((name) => !checked.has(name))).toEqual(['Change']);
    for (const entity of ENTITY_NAMES) {
      const columns = models.get(entity)?.filter((name) => !COMMON.slice(1).includes(name));
      const given = columns?.filter((name) => name !== 'nameFolded');
      expect([...columnsOf(entity)].sort(), entity).toEqual([...(given ?? [])].sort());
    }
  });
});

describe('providerOf', () => {
  it.each([
    ['.data/slate.db', 'sqlite'],
    ['/srv/postgres/slate.db', 'sqlite'],
    ['file:./x.db', 'sqlite'],
    ['postgres://db/slate', 'postgresql'],
    ['PostgreSQL://db/slate', 'postgresql'],
  ])('%s is %s', (url, provider) => {
    expect(providerOf(url)).toBe(provider);
  });
});
