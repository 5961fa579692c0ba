import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isPostgresUrl } from '#lib/store/database-file';

export const PROVIDERS = ['sqlite', 'postgresql'] as const;
export type Provider = (typeof PROVIDERS)[number];

export const PRISMA_FOLDER = dirname(fileURLToPath(import.meta.url));
export const PROJECT_ROOT = dirname(PRISMA_FOLDER);

/**
 * Which database a URL or a path means: `postgres:` and `postgresql:` by their scheme, all else a file.
 * `providerOf('.data/slate.db')` → `'sqlite'`.
 */
export function providerOf(url: string): Provider {
  return isPostgresUrl(url) ? 'postgresql' : 'sqlite';
}

/** The schema of a provider as text: its base and the models that all share. */
export function schemaText(provider: Provider): string {
  const read = (name: string) => readFileSync(join(PRISMA_FOLDER, name), 'utf8');
  return `${read(`base.${provider}.prisma`)}\n${read('models.prisma')}`;
}

/** Writes the joined schema where its generator puts the client into `prisma/generated`; returns its path. */
export function writeSchema(provider: Provider, folder = join(PRISMA_FOLDER, '.schema')): string {
  const file = join(folder, `${provider}.prisma`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(file, schemaText(provider));
  return file;
}

export function migrationsFolder(provider: Provider): string {
  return join(PRISMA_FOLDER, 'migrations', provider);
}
