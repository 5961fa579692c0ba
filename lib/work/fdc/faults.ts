/** A row that could not be taken as it stands: where it is and why. */
export interface RowFault {
  readonly file: string;
  /** As in "line 4" or "food 12". */
  readonly at: string;
  readonly why: string;
}

/** What an import has met: counts, and the first faults in full. */
export interface Tally {
  readonly foods: number;
  readonly rows: number;
  readonly faults: number;
  readonly firstFaults: readonly RowFault[];
  /** Nutrients without a name here, and how many values of each were passed over. */
  readonly unknownNutrients: Readonly<Record<string, number>>;
  /** Kinds of food that are not imported, and how many there were. */
  readonly passedOver: Readonly<Record<string, number>>;
}

/** Faults that are kept in full; more are only counted. */
export const KEPT_FAULTS = 100;
const MOST_NAMES = 500;

/** Counts as an import goes; can be saved and taken up again by another process. */
export class Counter {
  #foods = 0;
  #rows = 0;
  #faults = 0;
  readonly #first: RowFault[] = [];
  readonly #unknown = new Map<string, number>();
  readonly #passedOver = new Map<string, number>();

  constructor(before?: Tally) {
    if (!before) return;
    this.#foods = before.foods;
    this.#rows = before.rows;
    this.#faults = before.faults;
    this.#first.push(...before.firstFaults);
    for (const [name, n] of Object.entries(before.unknownNutrients)) this.#unknown.set(name, n);
    for (const [name, n] of Object.entries(before.passedOver)) this.#passedOver.set(name, n);
  }

  addFoods(n: number): void {
    this.#foods += n;
  }

  addRow(): void {
    this.#rows += 1;
  }

  fault(file: string, at: string, why: string): void {
    this.#faults += 1;
    if (this.#first.length < KEPT_FAULTS) this.#first.push({ file, at, why });
  }

  unknownNutrient(name: string): void {
    add(this.#unknown, name);
  }

  passOver(kind: string): void {
    add(this.#passedOver, kind);
  }

  get tally(): Tally {
    return {
      foods: this.#foods,
      rows: this.#rows,
      faults: this.#faults,
      firstFaults: [...this.#first],
      unknownNutrients: Object.fromEntries(this.#unknown),
      passedOver: Object.fromEntries(this.#passedOver),
    };
  }
}

/** Names beyond the first few hundred are one: a file of nothing but new names must not fill the memory. */
function add(counts: Map<string, number>, name: string): void {
  const short = name.slice(0, 80);
  const key = counts.has(short) || counts.size < MOST_NAMES ? short : 'others';
  counts.set(key, (counts.get(key) ?? 0) + 1);
}

/** A download that cannot be imported, or not to its end; the message says in words what is wrong and what would be right. */
export class DownloadError extends Error {
  override readonly name = 'DownloadError';
}
