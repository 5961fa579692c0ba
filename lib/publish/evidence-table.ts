import { scopeText } from '#lib/figures/breakdown-scope';
import type { Evidence } from '#lib/publish/evidence';
import type { EvidenceNumber, EvidenceRow } from '#lib/publish/evidence-numbers';

/** The working of one dish: its ingredients against what is published of it. */
export interface DishWorking {
  readonly title: string;
  /** The numbers that are published of all of it, in their order. */
  readonly numbers: readonly EvidenceNumber[];
  readonly rows: readonly {
    readonly ingredient: string;
    readonly grams: string;
    /** Names of its food or foods, with who states them. */
    readonly foods: string;
    /** What it adds to each number, in the order of `numbers`. */
    readonly adds: readonly string[];
  }[];
  /** Numbers of its portions and of 100 g, part by part. */
  readonly parts: readonly NumbersOfPart[];
}

/** The numbers of one amount. */
export interface NumbersOfPart {
  readonly part: string;
  readonly numbers: readonly EvidenceNumber[];
}

/**
 * Evidence as tables to read: one for each dish, and the day's numbers. Nothing is left out of it but the working of
 * parts, which are shares of their dish.
 * @example evidenceTable(evidence).dishes[0]?.rows[0] // { ingredient: '150 g pearl barley', grams: '150', … }
 */
export function evidenceTable({ numbers }: Evidence): {
  readonly dishes: readonly DishWorking[];
  readonly day: readonly EvidenceNumber[];
} {
  const ofDishes = numbers.filter(({ scope }) => scope.kind !== 'day');
  const titles = [...new Set(ofDishes.map(({ title }) => title))];
  return {
    dishes: titles.map((title) => dishWorking(title, ofDishes)),
    day: numbers.filter(({ scope }) => scope.kind === 'day'),
  };
}

function dishWorking(title: string, all: readonly EvidenceNumber[]): DishWorking {
  const own = all.filter((number) => number.title === title);
  const whole = own.filter(({ scope }) => scope.kind === 'whole');
  const parts = partsOf(own.filter(({ scope }) => scope.kind !== 'whole'));
  const [first] = whole;
  return {
    title,
    numbers: whole,
    rows: (first?.working ?? []).map((row, at) => ({
      ingredient: row.ingredient,
      grams: row.grams,
      foods: foodsText(row),
      adds: whole.map(({ working }) => working[at]?.adds ?? ''),
    })),
    parts,
  };
}

/** Amounts with their numbers; the part that is eaten once, where it is a portion as well. */
function partsOf(numbers: readonly EvidenceNumber[]): NumbersOfPart[] {
  const byScope = new Map<string, EvidenceNumber[]>();
  for (const number of numbers) {
    const key = scopeText(number.scope);
    byScope.set(key, [...(byScope.get(key) ?? []), number]);
  }
  const all = [...byScope.values()];
  const written = (of: readonly EvidenceNumber[]) =>
    new Map(of.map(({ nutrient, text, range }) => [nutrient, `${text} ${range}`]));
  const isSaidAlready = (of: readonly EvidenceNumber[]) =>
    of[0]?.scope.kind === 'eaten' &&
    all.some((other) => {
      const there = written(other);
      return other !== of && [...written(of)].every(([name, text]) => there.get(name) === text);
    });
  return all.flatMap((of) => {
    const [first] = of;
    return first && !isSaidAlready(of) ? [{ part: first.part, numbers: of }] : [];
  });
}

function foodsText({ foods, madeFrom }: EvidenceRow): string {
  if (madeFrom !== null) return `made from “${madeFrom}”`;
  return foods.map(({ name, source }) => `${name} (${source})`).join(' or ');
}
