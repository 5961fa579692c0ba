import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { PROJECT_ROOT, PROVIDERS, writeSchema, type Provider } from '#db/provider';

/**
 * Generates the client of a provider into `prisma/generated/<provider>`. The command line looks for a
 * native engine that it would download; generating needs none, so any existing file stands in for it.
 * The client lies beside the folder of the joined schema, in `generated`.
 */
export async function generateClient(provider: Provider, schemaFolder?: string): Promise<void> {
  const schema = writeSchema(provider, schemaFolder);
  const cli = join(PROJECT_ROOT, 'node_modules', 'prisma', 'build', 'index.js');
  const program = spawn(process.execPath, [cli, 'generate', '--schema', schema, '--no-hints'], {
    cwd: PROJECT_ROOT,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {
      ...process.env,
      PRISMA_SCHEMA_ENGINE_BINARY: schema,
      CHECKPOINT_DISABLE: '1',
      PRISMA_HIDE_UPDATE_MESSAGE: '1',
    },
  });
  const ended = new Promise<number | null>((resolve, reject) => {
    program.once('error', reject).once('close', resolve);
  });
  const said = await Promise.all([text(program.stdout), text(program.stderr)]);
  if ((await ended) === 0) return;
  throw new Error(
    `The ${provider} client could not be generated. Run "npm install" and try again. ` +
      `What the command line said:\n${said.join('')}`,
  );
}

// Run as a program: the providers named, or all, since the store is built with both.
if (process.argv[1]?.endsWith('generate.ts')) {
  const named = PROVIDERS.filter((provider) => process.argv.includes(provider));
  const wanted = named.length > 0 ? named : PROVIDERS;
  await Promise.all(wanted.map((provider) => generateClient(provider)));
  console.log(`Generated the clients of ${wanted.join(' and ')}.`);
}
