import { isMany, getManyValues, none } from 'stream-chain/core';
import { Assembler } from 'stream-json/core/assembler.js';
import { jsonParser, type Token } from 'stream-json/core/parser.js';
import { DownloadError } from '#lib/work/fdc/faults';
import type { DownloadFile } from '#lib/work/fdc/open-download';
import { watched, type Tell } from '#lib/work/fdc/progress';

/** The names of the one array of a JSON download. */
const ARRAYS = ['FoundationFoods', 'SRLegacyFoods', 'BrandedFoods', 'SurveyFoods'] as const;
export type ArrayName = (typeof ARRAYS)[number];

/** One entry of the array, its numbers as the texts that they were printed with. */
export interface JsonFood {
  readonly array: ArrayName;
  /** Its place in the array, from 1. */
  readonly place: number;
  readonly food: unknown;
}

/** A food takes a few thousand bytes; what goes on for longer is broken. */
const LONGEST_FOOD = 32_000_000;
/** Bytes parsed at a time: what stands before a fault in the same piece is lost with it. */
const PIECE = 8192;

/**
 * The foods of a JSON download one after another, however long it is. A file that ends early or breaks off in the
 * middle gives the foods before that and then a `DownloadError` which says so.
 */
export async function* readJsonFoods(file: DownloadFile, tell: Tell): AsyncGenerator<JsonFood> {
  const source = await watched(file, tell);
  const walk = new Walk(file.name);
  const parse = jsonParser({ packValues: true, streamValues: false }) as (
    input: string | typeof none,
  ) => unknown;
  const decoder = new TextDecoder('utf-8');
  let sinceFood = 0;
  const tokens = (input: string | typeof none): readonly Token[] => {
    const found: unknown = walk.guarded(() => parse(input));
    return isMany(found) ? (getManyValues(found) as Token[]) : [];
  };
  try {
    for await (const chunk of source as AsyncIterable<Buffer>) {
      for (let at = 0; at < chunk.length; at += PIECE) {
        const text = decoder.decode(chunk.subarray(at, at + PIECE), { stream: true });
        if (text === '') continue;
        const foods = walk.take(tokens(text));
        sinceFood = foods.length > 0 ? 0 : sinceFood + PIECE;
        if (sinceFood > LONGEST_FOOD)
          throw walk.broken(`goes on for more than ${LONGEST_FOOD} bytes`);
        yield* foods;
      }
    }
    yield* walk.take(tokens(none));
    walk.end();
  } finally {
    source.destroy();
  }
}

/** Where in the file the tokens are: before the array, in it, or in something else that is passed over. */
class Walk {
  readonly #file: string;
  #depth = 0;
  #key = '';
  #array: ArrayName | null = null;
  #found = false;
  #place = 0;
  #food: Assembler | null = null;
  readonly #otherKeys: string[] = [];

  constructor(file: string) {
    this.#file = file;
  }

  take(tokens: readonly Token[]): JsonFood[] {
    const foods: JsonFood[] = [];
    for (const token of tokens) {
      const food = this.#array !== null ? this.#inArray(token, this.#array) : this.#outside(token);
      if (food) foods.push(food);
    }
    return foods;
  }

  #outside(token: Token): null {
    const { name } = token;
    if (name === 'startObject' || name === 'startArray') {
      if (this.#depth === 0 && name === 'startArray') throw this.#noArray('a list without a name');
      if (this.#depth === 1 && name === 'startArray' && isArrayName(this.#key)) {
        this.#array = this.#key;
        this.#found = true;
        this.#place = 0;
      }
      this.#depth += 1;
    } else if (name === 'endObject' || name === 'endArray') this.#depth -= 1;
    else if (name === 'keyValue' && this.#depth === 1) {
      this.#key = token.value;
      if (!isArrayName(token.value)) this.#otherKeys.push(token.value.slice(0, 40));
    }
    return null;
  }

  #inArray(token: Token, array: ArrayName): JsonFood | null {
    if (this.#food === null) {
      if (token.name === 'endArray') {
        this.#array = null;
        this.#depth -= 1;
        return null;
      }
      this.#place += 1;
      this.#food = new Assembler({ numberAsString: true });
    }
    const assembler = this.#food;
    assembler.consume(token);
    if (!assembler.done) return null;
    this.#food = null;
    return { array, place: this.#place, food: assembler.current as unknown };
  }

  end(): void {
    if (!this.#found) throw this.#noArray(this.#otherKeys.slice(0, 5).join(', ') || 'nothing');
  }

  #noArray(found: string): DownloadError {
    return new DownloadError(
      `${this.#file} has no list named ${ARRAYS.slice(0, 3).join(', ')}, but ${found}. Give the JSON as published.`,
    );
  }

  guarded<T>(work: () => T): T {
    try {
      return work();
    } catch (error) {
      throw this.broken(error instanceof Error ? error.message : String(error));
    }
  }

  broken(why: string): DownloadError {
    const where =
      this.#place === 0
        ? 'before its first food'
        : this.#array === null
          ? `after its last food, number ${this.#place}`
          : `in food ${this.#food ? this.#place : this.#place + 1} or right after it`;
    return new DownloadError(
      `${this.#file} is not whole: it breaks off ${where} (${why}). The foods before that are kept; ` +
        'download it again and import it once more for the rest.',
    );
  }
}

function isArrayName(text: string): text is ArrayName {
  return (ARRAYS as readonly string[]).includes(text);
}
