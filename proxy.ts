import { NextResponse, type NextRequest } from 'next/server';
import { admission, PAIR, type Knock } from '#lib/door/admission';
import { DOOR_HEADER, SESSION_COOKIE } from '#lib/door/session';
import { isFromDoor } from '#lib/store/open-door';
import { isLetIn } from '#lib/store/paired-devices';

/** Looks at every request before anything else does: from where it comes, and whether it may come in. */
export async function proxy(request: NextRequest): Promise<NextResponse> {
  const { headers, method, nextUrl } = request;
  const knock: Knock = {
    door: isFromDoor(headers.get(DOOR_HEADER)),
    host: headers.get('host'),
    method,
    path: nextUrl.pathname,
    origin: headers.get('origin'),
    fetchSite: headers.get('sec-fetch-site'),
    action: headers.has('next-action'),
  };
  const answer = admission(knock);
  if (answer.kind === 'refuse') return plain(answer.status, answer.words);
  if (answer.kind === 'pass') return NextResponse.next();
  const token = request.cookies.get(SESSION_COOKIE)?.value ?? '';
  if (await isLetIn(token, new Date())) return NextResponse.next();
  const wantsPage = method === 'GET' && (headers.get('accept') ?? '').includes('text/html');
  if (!wantsPage) return plain(401, 'This device is not let in.');
  // The framework knows itself under its loopback address alone, so the way is written out.
  const answered = NextResponse.redirect(`https://${knock.host}${PAIR}`, 307);
  answered.headers.set('cache-control', 'no-store');
  return answered;
}

function plain(status: number, words: string): NextResponse {
  return new NextResponse(`${words}\n`, {
    status,
    headers: { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' },
  });
}
