import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { format } from 'date-fns/format';
import { schemaDiff, type DiffSide } from '#db/engine';
import { applyMigrations } from '#db/migrate';
import { migrationsFolder, PROVIDERS, schemaText, type Provider } from '#db/provider';

/** The schema that a provider's migrations lead to, kept beside them where no database is at hand to ask. */
export function snapshotFile(provider: Provider): string {
  return join(migrationsFolder(provider), 'schema.prisma');
}

/**
 * The SQL that the migrations of a provider still lack, empty where they equal the models.
 * For SQLite they are applied to an empty file, which is compared; for PostgreSQL the schema kept beside
 * them stands for the database.
 */
export async function missingSql(provider: Provider): Promise<string> {
  const to: DiffSide = { kind: 'schema', text: schemaText(provider) };
  if (provider === 'postgresql') {
    const file = snapshotFile(provider);
    const from: DiffSide = existsSync(file)
      ? { kind: 'schema', text: readFileSync(file, 'utf8') }
      : { kind: 'nothing' };
    return schemaDiff(provider, from, to);
  }
  const scratch = mkdtempSync(join(tmpdir(), 'slate-migration-'));
  try {
    const path = join(scratch, 'empty.db');
    applyMigrations(path, migrationsFolder(provider));
    return await schemaDiff(provider, { kind: 'file', path }, to);
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

/** Writes the next migration of each provider whose migrations lag behind the models. */
export async function authorMigrations(name: string, now: Date): Promise<readonly string[]> {
  const folderName = `${format(now, 'yyyyMMddHHmmss')}_${name}`;
  const written: string[] = [];
  for (const provider of PROVIDERS) {
    const folder = migrationsFolder(provider);
    mkdirSync(folder, { recursive: true });
    const sql = await missingSql(provider);
    if (sql === '') continue;
    mkdirSync(join(folder, folderName));
    writeFileSync(join(folder, folderName, 'migration.sql'), sql);
    writeFileSync(join(folder, 'migration_lock.toml'), `${LOCK_COMMENT}provider = "${provider}"\n`);
    if (provider === 'postgresql') writeFileSync(snapshotFile(provider), schemaText(provider));
    written.push(join(folder, folderName, 'migration.sql'));
  }
  return written;
}

const LOCK_COMMENT = '# Kept under version control: which database these migrations are for.\n';

// Run as a program: npm run migration -- NAME
if (process.argv[1]?.endsWith('author.ts')) {
  const name = process.argv[2] ?? '';
  if (!/^[a-z][a-z0-9_]*$/.test(name)) {
    console.error('Give the migration a name in lower case: npm run migration -- add_lens_notes');
    process.exit(1);
  }
  const written = await authorMigrations(name, new Date());
  console.log(
    written.length > 0
      ? `Wrote ${written.join(' and ')}. Read them before you commit them.`
      : 'The migrations already lead to the models: nothing to write.',
  );
}
