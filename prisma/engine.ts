import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils';
import type { DiffTarget, SchemaEngine } from '@prisma/schema-engine-wasm';
import * as bindings from '@prisma/schema-engine-wasm/schema_engine_bg';
import { schemaText, type Provider } from '#db/provider';

/** What a database is compared from or to: nothing, a schema as text, or an SQLite file as it stands. */
export type DiffSide =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'schema'; readonly text: string }
  | { readonly kind: 'file'; readonly path: string };

/**
 * The SQL that turns one side into the other; empty text where they are the same.
 * Sides that are schemas need no database, so it answers for PostgreSQL on any machine.
 */
export async function schemaDiff(
  provider: Provider,
  from: DiffSide,
  to: DiffSide,
): Promise<string> {
  const file = [from, to].find((side) => side.kind === 'file');
  const factory =
    provider === 'sqlite'
      ? new PrismaBetterSqlite3({ url: file?.kind === 'file' ? file.path : ':memory:' })
      : absentPostgres();
  const engine = await openEngine(provider, factory);
  try {
    const { stdout } = await engine.diff({
      from: target(provider, from),
      to: target(provider, to),
      script: true,
      exitCode: null,
      filters: {
        externalTables: provider === 'sqlite' ? ['_prisma_migrations'] : [],
        externalEnums: [],
      },
    });
    const sql = stdout ?? '';
    return sql.startsWith('-- This is an empty migration') ? '' : sql;
  } finally {
    engine.free();
  }
}

function target(provider: Provider, side: DiffSide): DiffTarget {
  const path = `${provider}.prisma`;
  switch (side.kind) {
    case 'nothing':
      return { tag: 'empty' };
    case 'schema':
      return { tag: 'schemaDatamodel', files: [{ path, content: side.text }] };
    case 'file':
      return {
        tag: 'schemaDatasource',
        files: [{ path, content: schemaText(provider) }],
        configDir: '.',
      };
  }
}

async function openEngine(
  provider: Provider,
  factory: SqlMigrationAwareDriverAdapterFactory,
): Promise<SchemaEngine> {
  await (loaded ??= load());
  return bindings.SchemaEngine.new(
    { datamodels: [[`${provider}.prisma`, schemaText(provider)]] },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(factory),
  );
}

let loaded: Promise<void> | undefined;

/** Starts the WebAssembly, once per process: bundlers would do this for us, Node does not. */
async function load(): Promise<void> {
  const bytes = readFileSync(
    createRequire(import.meta.url)
      .resolve('@prisma/schema-engine-wasm')
      .replace(/schema_engine\.js$/, 'schema_engine_bg.wasm'),
  );
  const { instance } = await WebAssembly.instantiate(bytes, {
    './schema_engine_bg.js': bindings as unknown as WebAssembly.ModuleImports,
  });
  // The engine tells a panic to this object before it stops.
  Object.assign(globalThis, {
    PRISMA_WASM_PANIC_REGISTRY: {
      set_message(message: string) {
        throw new Error(`The schema engine stopped: ${message}`);
      },
    },
  });
  const loose = bindings as unknown as { __wbg_set_wasm(exports: unknown): void };
  loose.__wbg_set_wasm(instance.exports);
  (instance.exports as unknown as { __wbindgen_start(): void }).__wbindgen_start();
}

/** Answers the one question the engine asks of PostgreSQL before it compares two schemas: its version. */
function absentPostgres(): SqlMigrationAwareDriverAdapterFactory {
  const refuse = () =>
    Promise.reject(new Error('There is no PostgreSQL here: compare schemas only'));
  const adapter: SqlDriverAdapter = {
    provider: 'postgres',
    adapterName: 'absent',
    queryRaw: ({ sql }) =>
      sql.includes('version()')
        ? Promise.resolve({
            columnNames: ['exists', 'version', 'numeric_version'],
            columnTypes: [5, 7, 0],
            rows: [[true, 'PostgreSQL 16.0', 160000]],
          })
        : refuse(),
    executeRaw: refuse,
    executeScript: refuse,
    startTransaction: refuse,
    dispose: () => Promise.resolve(),
  };
  const connect = () => Promise.resolve(adapter);
  return { provider: 'postgres', adapterName: 'absent', connect, connectToShadowDb: connect };
}
