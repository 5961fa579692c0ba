import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { PROJECT_ROOT, PROVIDERS, writeSchema, type Provider } from '#db/provider';

/**
 * Generates the client of a provider into `prisma/generated/<provider>`. The command line looks for a
 * native engine that it would download; generating needs none, so any existing file stands in for it.
 * The client lies beside the folder of the joined schema, in `generated`.
 */
export function generateClient(provider: Provider, schemaFolder?: string): void {
  const schema = writeSchema(provider, schemaFolder);
  const cli = join(PROJECT_ROOT, 'node_modules', 'prisma', 'build', 'index.js');
  const done = spawnSync(process.execPath, [cli, 'generate', '--schema', schema, '--no-hints'], {
    cwd: PROJECT_ROOT,
    encoding: 'utf8',
    env: {
      ...process.env,
      PRISMA_SCHEMA_ENGINE_BINARY: schema,
      CHECKPOINT_DISABLE: '1',
      PRISMA_HIDE_UPDATE_MESSAGE: '1',
    },
  });
  if (done.status !== 0) {
    throw new Error(
      `The ${provider} client could not be generated. Run "npm install" and try again. ` +
        `What the command line said:\n${done.stdout}${done.stderr}`,
    );
  }
}

// Run as a program: one provider by name, or the one this project runs on by default.
if (process.argv[1]?.endsWith('generate.ts')) {
  const asked = process.argv.slice(2);
  const wanted = asked.includes('all') ? PROVIDERS : PROVIDERS.filter((p) => asked.includes(p));
  for (const provider of wanted.length > 0 ? wanted : (['sqlite'] as const)) {
    generateClient(provider);
    console.log(`Generated the ${provider} client.`);
  }
}
