import project from '../../package.json';

export const dynamic = 'force-dynamic';

/** Says which program serves here, and for which folder and database. It reads no database. */
export function GET(): Response {
  const body = {
    name: project.name,
    version: project.version,
    instance: process.env.SLATE_INSTANCE ?? null,
    build: process.env.SLATE_BUILD ?? null,
    phone: (process.env.SLATE_DOOR_SECRET ?? '') !== '',
  };
  return Response.json(body, { headers: { 'cache-control': 'no-store' } });
}
