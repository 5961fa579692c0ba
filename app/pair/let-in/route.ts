import { PAIR } from '#lib/door/admission';
import { DOOR_HEADER, SESSION_COOKIE, SESSION_DAYS } from '#lib/door/session';
import { toldOf } from '#lib/door/told';
import { isFromDoor } from '#lib/store/open-door';
import { letIn } from '#lib/store/paired-devices';
import { tryCode } from '#lib/store/pairing-codes';
import { pairForm } from '../schema';

/** Far more than a code and a name. */
const LARGEST = 4096;
const DAY_S = 86_400;

/**
 * Lets a device in for a code. It is a plain form and no server action: a page that answers everybody must
 * give nobody a way to the actions of other pages.
 */
export async function POST(request: Request): Promise<Response> {
  if (!isFromDoor(request.headers.get(DOOR_HEADER))) {
    return plain(403, 'A device is let in at the phone’s address, not here.');
  }
  const length = Number(request.headers.get('content-length') ?? Number.NaN);
  if (!(length <= LARGEST)) return plain(413, 'This is too large.');
  const typed = await textsOf(request);
  if (typed === null) return plain(400, 'This is no form.');
  const parsed = pairForm.safeParse(typed);
  if (!parsed.success) return back({ told: 'name', left: '' }, typed);
  const at = new Date();
  const told = toldOf(tryCode(parsed.data.code, at));
  if (told !== null) return back(told, typed);
  const token = await letIn(parsed.data.name, at);
  if (!token.ok) throw new Error(token.problems.map(({ message }) => message).join(' '));
  const kept = `Path=/; Max-Age=${SESSION_DAYS * DAY_S}; HttpOnly; Secure; SameSite=Strict`;
  return seeOther('/', { 'set-cookie': `${SESSION_COOKIE}=${token.value}; ${kept}` });
}

async function textsOf(request: Request): Promise<{ name: string; code: string } | null> {
  try {
    const form = await request.formData();
    const text = (name: string) => {
      const value = form.get(name);
      return typeof value === 'string' ? value : '';
    };
    return { name: text('name'), code: text('code') };
  } catch {
    return null;
  }
}

function back(
  told: { readonly told: string; readonly left: string },
  typed: { readonly name: string; readonly code: string },
): Response {
  return seeOther(`${PAIR}?${new URLSearchParams({ ...told, ...typed }).toString()}`);
}

function seeOther(location: string, more: Readonly<Record<string, string>> = {}): Response {
  const headers = { location, 'cache-control': 'no-store', ...more };
  return new Response(null, { status: 303, headers });
}

function plain(status: number, words: string): Response {
  return new Response(`${words}\n`, { status, headers: { 'cache-control': 'no-store' } });
}
