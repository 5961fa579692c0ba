import { failed, ok, type Result } from '#lib/result';

/** A value of JSON with the place at which it begins, in UTF-16 units. */
export type JsonNode = { readonly at: number } & (
  | { readonly kind: 'text'; readonly value: string }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'word'; readonly value: boolean | null }
  | { readonly kind: 'list'; readonly items: readonly JsonNode[] }
  | { readonly kind: 'object'; readonly entries: ReadonlyMap<string, JsonNode> }
);

/** Lists and objects within each other; more are refused, so that no text can exhaust the machine. */
const DEEPEST = 64;

/** What stands wrong in a text, and where. */
class Wrong extends Error {
  constructor(
    readonly at: number,
    readonly words: string,
  ) {
    super(words);
  }
}

/**
 * Reads JSON (RFC 8259) and keeps the place of each value, so that a person can be told where it stands. Of a name that
 * an object has twice the last counts, as `JSON.parse` does it.
 * @param begins where the text begins within what was pasted
 * @returns refused with the place (`facts.at`) and what is expected there
 * @example readJson('{"name": 1}') // an object whose "name" is a number at 9
 */
export function readJson(text: string, begins = 0): Result<JsonNode> {
  const reader = new JsonReader(text, begins);
  try {
    return ok(reader.whole());
  } catch (error) {
    if (!(error instanceof Wrong)) throw error;
    const { at, words } = error;
    return failed({ path: 'text', code: 'no-json', message: words, facts: { at: at + begins } });
  }
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const SPACE = /[ \t\n\r]*/y;
/** A text up to its end or an escape. */
const PLAIN = /[^"\\]*/y;
/** Signs below a blank must be escaped (RFC 8259, 7). */
const BLANK = 0x20;
const WORDS: Readonly<Record<string, boolean | null>> = { true: true, false: false, null: null };
const ESCAPES: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
};

/** Where the first sign stands that must be escaped; -1 for none. */
function controlIn(text: string): number {
  for (let at = 0; at < text.length; at += 1) if (text.charCodeAt(at) < BLANK) return at;
  return -1;
}

class JsonReader {
  private at = 0;
  constructor(
    private readonly text: string,
    private readonly begins: number,
  ) {}

  whole(): JsonNode {
    const value = this.value(0);
    this.space();
    if (this.at < this.text.length) this.wrong('nothing more is expected');
    return value;
  }

  private value(depth: number): JsonNode {
    if (depth > DEEPEST) this.wrong(`it is nested deeper than ${DEEPEST} times`, true);
    this.space();
    const at = this.at + this.begins;
    const first = this.text[this.at];
    if (first === '"') return { kind: 'text', at, value: this.string() };
    if (first === '{') return { kind: 'object', at, entries: this.object(depth) };
    if (first === '[') return { kind: 'list', at, items: this.list(depth) };
    const number = this.match(NUMBER);
    if (number !== '') return { kind: 'number', at, value: Number(number) };
    for (const [word, value] of Object.entries(WORDS)) {
      if (!this.text.startsWith(word, this.at)) continue;
      this.at += word.length;
      return { kind: 'word', at, value };
    }
    return this.wrong('a value is expected');
  }

  private list(depth: number): JsonNode[] {
    const items: JsonNode[] = [];
    this.at += 1;
    if (this.next(']')) return items;
    for (;;) {
      items.push(this.value(depth + 1));
      if (this.next(']')) return items;
      if (!this.next(',')) this.wrong('a comma or the end of the list, “]”, is expected');
    }
  }

  private object(depth: number): Map<string, JsonNode> {
    const entries = new Map<string, JsonNode>();
    this.at += 1;
    if (this.next('}')) return entries;
    for (;;) {
      this.space();
      if (this.text[this.at] !== '"') this.wrong('a name in double quotes is expected');
      const name = this.string();
      if (!this.next(':')) this.wrong('a colon is expected');
      entries.set(name, this.value(depth + 1));
      if (this.next('}')) return entries;
      if (!this.next(',')) this.wrong('a comma or the end of the object, “}”, is expected');
    }
  }

  private string(): string {
    this.at += 1;
    const parts: string[] = [];
    for (;;) {
      const from = this.at;
      const plain = this.match(PLAIN);
      const bad = controlIn(plain);
      if (bad >= 0) {
        this.at = from + bad;
        this.wrong('a text in quotes goes over its line, or has a sign that none may have', true);
      }
      parts.push(plain);
      const next = this.text[this.at];
      if (next === undefined) this.wrong('the text in quotes does not end', true);
      if (next === '"') {
        this.at += 1;
        return parts.join('');
      }
      parts.push(this.escape());
    }
  }

  private escape(): string {
    const letter = this.text[this.at + 1] ?? '';
    const code = /^[0-9a-fA-F]{4}$/.exec(this.text.slice(this.at + 2, this.at + 6))?.[0];
    if (letter === 'u' && code !== undefined) {
      this.at += 6;
      return String.fromCharCode(parseInt(code, 16));
    }
    const meant = ESCAPES[letter];
    if (meant === undefined || letter === '') return this.wrong('“\\” means nothing before this');
    this.at += 2;
    return meant;
  }

  private next(sign: string): boolean {
    this.space();
    const isThere = this.text[this.at] === sign;
    if (isThere) this.at += 1;
    return isThere;
  }

  private space(): void {
    this.match(SPACE);
  }

  private match(pattern: RegExp): string {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0] ?? '';
    this.at += found.length;
    return found;
  }

  /** @param whole the words say all; what stands there needs no telling */
  private wrong(words: string, whole = false): never {
    const there = this.text[this.at];
    const found = there === undefined ? 'the text ends' : `there is “${there}”`;
    throw new Wrong(this.at, whole ? words : `${words}, and ${found}`);
  }
}
