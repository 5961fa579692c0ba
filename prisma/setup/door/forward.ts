import { Agent, request as ask, type IncomingMessage, type ServerResponse } from 'node:http';
import { allowedHost } from '#lib/door/host';
import { DOOR_HEADER } from '#lib/door/session';

/** What the door passes on, and to whom. */
export interface Way {
  /** The loopback port of the program. */
  readonly inner: number;
  /** The secret of this run. */
  readonly secret: string;
  /** The names and addresses of this machine, and the port, under which it may be asked. */
  readonly names: readonly string[];
  readonly port: () => number;
}

/** An episode file has 20 MB at most; the rest is the form around it. */
export const LARGEST_BODY = 22 * 1024 * 1024;
/** The longest wait for the first word of an answer. */
const PATIENCE_MS = 120_000;

/** Headers between two neighbours, not passed on: RFC 9110 section 7.6.1 (from memory). */
const HOP =
  /^(?:connection|keep-alive|proxy-.*|te|trailer|transfer-encoding|upgrade|http2-settings|expect)$/i;
/** Headers that say where a request came from or steer the framework: a client's word for it counts for nothing. */
const OURS =
  /^(?:x-slate-.*|x-forwarded-.*|forwarded|x-real-ip|x-middleware-.*|x-nextjs-.*|x-invoke-.*)$/i;
const PATH = /^\/(?![/\\])(?:(?!\/\/|\\|%2e|%2f|%5c|%00|\/\.\.?(?:\/|$))[\x21-\x7e])*$/i;

const SAFE: readonly string[] = [
  ...['x-content-type-options', 'nosniff'],
  ...['x-frame-options', 'DENY'],
  ...['referrer-policy', 'same-origin'],
  ...['cross-origin-resource-policy', 'same-origin'],
];

/** Pairs of a flat list of headers, without those that a pattern or `Connection` itself names. */
function passing(raw: readonly string[], ...without: readonly RegExp[]): string[] {
  const kept: string[] = [];
  for (let at = 0; at + 1 < raw.length; at += 2) {
    const name = raw[at] ?? '';
    if (!without.some((pattern) => pattern.test(name))) kept.push(name, raw[at + 1] ?? '');
  }
  return kept;
}

/** The headers that go inward: the client's own, without those it may not send, and the secret of this run. */
export function headersInward(raw: readonly string[], secret: string): string[] {
  return [...passing(raw, HOP, OURS), DOOR_HEADER, secret, 'x-forwarded-proto', 'https'];
}

/** Why a request is not passed on; null where it is. */
export function refusal(request: IncomingMessage, way: Way): readonly [number, string] | null {
  const { host = null, 'content-length': length } = request.headers;
  const hosts = request.rawHeaders.filter((each, at) => at % 2 === 0 && /^host$/i.test(each));
  if (hosts.length !== 1 || !allowedHost(host, way.names, way.port())) {
    return [421, 'This address is not served here.'];
  }
  if (!['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE'].includes(request.method ?? '')) {
    return [405, 'This is not done here.'];
  }
  if (!PATH.test((request.url ?? '').split('?')[0] ?? ''))
    return [400, 'This is no address of a page.'];
  if (length !== undefined && Number(length) > LARGEST_BODY) return [413, 'This is too large.'];
  return null;
}

/** Answers in plain words, and hears no more on this connection. */
function say(answer: ServerResponse, [status, words]: readonly [number, string]): void {
  if (answer.headersSent) {
    answer.destroy();
    return;
  }
  const type = ['content-type', 'text/plain; charset=utf-8', 'cache-control', 'no-store'];
  answer.writeHead(status, [...type, 'connection', 'close', ...SAFE]);
  answer.end(`${words}\n`);
}

/** Passes requests on to the program on loopback, and its answers back as they come, byte by byte. */
export function forwarder(way: Way): (request: IncomingMessage, answer: ServerResponse) => void {
  const agent = new Agent({ keepAlive: true, maxSockets: 64 });
  return (request, answer) => {
    const refused = refusal(request, way);
    if (refused !== null) {
      say(answer, refused);
      return;
    }
    const headers = headersInward(request.rawHeaders, way.secret);
    if (request.headers['transfer-encoding'] !== undefined)
      headers.push('transfer-encoding', 'chunked');
    const { method, url: path } = request;
    const inner = ask({ host: '127.0.0.1', port: way.inner, method, path, headers, agent });
    const late = setTimeout(() => {
      say(answer, [504, 'Scale & Slate did not answer in time.']);
      inner.destroy();
    }, PATIENCE_MS);
    inner.on('response', (said) => {
      clearTimeout(late);
      answer.writeHead(said.statusCode ?? 502, [...passing(said.rawHeaders, HOP), ...SAFE]);
      answer.flushHeaders();
      said.on('error', () => answer.destroy());
      said.pipe(answer);
    });
    inner.on('error', () => {
      clearTimeout(late);
      say(answer, [502, 'Scale & Slate does not answer. Is it still running on the computer?']);
    });
    answer.on('close', () => {
      clearTimeout(late);
      inner.destroy();
    });
    let bytes = 0;
    request.on('data', (chunk: Buffer) => {
      bytes += chunk.length;
      if (bytes <= LARGEST_BODY) return;
      say(answer, [413, 'This is too large.']);
      inner.destroy();
    });
    request.pipe(inner);
  };
}
