import { readAuthority } from '#lib/store/open-door';

export const dynamic = 'force-dynamic';

/** The certificate of the authority that vouches for the phone's door, for a phone to trust once. */
export async function GET(): Promise<Response> {
  const bytes = await readAuthority();
  if (bytes === null) return new Response('The phone’s door is not open.\n', { status: 404 });
  return new Response(bytes, {
    headers: {
      'content-type': 'application/x-x509-ca-cert',
      'content-disposition': 'attachment; filename="scale-and-slate.crt"',
      'cache-control': 'no-store',
    },
  });
}
