import { failed, ok, type Result } from '#lib/result';

/** A fault in a text, at a line from 1; caught by `reading`. */
class ReadFault extends Error {
  constructor(
    readonly line: number,
    readonly expected: string,
    readonly found: string,
  ) {
    super(expected);
  }
}

/** The words of a text one after another, with the line of each. Lines from a comment sign on are left out. */
export class Words {
  private readonly words: { readonly text: string; readonly line: number }[] = [];
  private at = 0;
  private readonly lastLine: number;

  /** @param word what counts as one word; what stands between words is skipped */
  constructor(text: string, word: RegExp, comment: string | null) {
    const lines = text.split(/\r\n|\r|\n/);
    this.lastLine = lines.length;
    lines.forEach((whole, index) => {
      const line = comment === null ? whole : (whole.split(comment)[0] ?? '');
      for (const [found] of line.matchAll(word)) this.words.push({ text: found, line: index + 1 });
    });
  }

  /** Whether any word is left. */
  get more(): boolean {
    return this.at < this.words.length;
  }

  /** The next word, without taking it; empty at the end. */
  get next(): string {
    return this.words[this.at]?.text ?? '';
  }

  /** Whether the next word is this one. */
  is(word: string): boolean {
    return this.next === word;
  }

  /** The line of the next word. */
  get line(): number {
    return this.words[this.at]?.line ?? this.lastLine;
  }

  fail(expected: string): never {
    throw new ReadFault(this.line, expected, this.more ? `"${this.next}"` : 'the end of the text');
  }

  take(expected: string): string {
    if (!this.more) this.fail(expected);
    const word = this.next;
    this.at += 1;
    return word;
  }

  /** Takes the next word, which must be this one. */
  mark(word: string): void {
    if (this.next !== word) this.fail(`"${word}"`);
    this.at += 1;
  }

  /** Takes words up to and with this one. */
  skipTo(word: string): void {
    const from = this.at;
    while (this.more && this.next !== word) this.at += 1;
    if (this.more) {
      this.at += 1;
      return;
    }
    this.at = from;
    this.fail(`"${word}" further on`);
  }

  /** A whole number from `least` to `most`. */
  whole(what: string, least: number, most = 2 ** 28): number {
    const expected = `${what}, a whole number from ${least} to ${most}`;
    if (!/^[+-]?\d+$/.test(this.next)) this.fail(expected);
    const value = Number(this.next);
    if (value < least || value > most) this.fail(expected);
    this.at += 1;
    return value;
  }

  /** That many whole numbers. */
  wholes(count: number, what: string, least: number, most?: number): number[] {
    return Array.from({ length: count }, () => this.whole(what, least, most));
  }

  end(): void {
    if (this.more) this.fail('the end of the text');
  }
}

/**
 * Runs a reader; what it found wrong comes back as one problem with line, what was expected and what stood
 * there.
 */
export function reading<T>(read: () => T): Result<T> {
  try {
    return ok(read());
  } catch (fault) {
    if (!(fault instanceof ReadFault)) throw fault;
    const { line, expected, found } = fault;
    return failed({
      path: `line ${line}`,
      code: 'unexpected-text',
      message: `Line ${line}: expected ${expected}, found ${found}.`,
      facts: { line, expected, found },
    });
  }
}
