import { settled } from '#lib/units/print';

/**
 * Whole numbers published together must add up. The tally chooses, for each number of a tree whose parents
 * are the sums of their children, one of its two neighbouring multiples of a step.
 */
export interface TallyNode {
  readonly id: string;
  readonly value: number;
  /** Hard bounds of the number. */
  readonly low: number;
  readonly high: number;
  /** A number already spoken: it stands, and the others give way. */
  readonly fixed: number | null;
  readonly children: readonly TallyNode[];
}

export interface TalliedNumber {
  readonly printed: number;
  /** True where the printed number, ± half a step, misses the hard bound: it adds up only by rounding. */
  readonly onlyByRounding: boolean;
}

export interface Tally {
  readonly addsUp: boolean;
  readonly numbers: ReadonlyMap<string, TalliedNumber>;
}

/** One way to print a subtree, with its cost: Σ|p − v| and the misses of each node in order. */
interface Choice {
  readonly cost: number;
  readonly misses: readonly number[];
  readonly printed: readonly (readonly [string, number])[];
}

/**
 * Least change at the root, then least Σ|printed − value|, ties by position; exact, by dynamic programming
 * over the tree. First with every printed number inside its hard bound widened by half a step; if there is
 * no such choice, without that, and the numbers concerned say so. Where spoken numbers cannot be made to
 * add up, each is rounded alone and `addsUp` is false.
 *
 * @param step what to round to, in the unit of the values
 * @example children 1.4 and 1.4 under 2.8, step 1: prints 3 = 1 + 2 (the later one gives way)
 */
export function tally(root: TallyNode, step: number): Tally {
  const strict = best(root, step, true);
  const choice = strict ?? best(root, step, false);
  if (choice) return { addsUp: true, numbers: numbersOf(root, new Map(choice.printed), step) };
  const alone = new Map<string, number>();
  for (const node of flatten(root)) {
    alone.set(node.id, node.fixed ?? nearest(node.value, step));
  }
  return { addsUp: false, numbers: numbersOf(root, alone, step) };
}

function nearest(value: number, step: number): number {
  return settled(Math.floor(settled(value / step + 0.5)) * step);
}

function flatten(node: TallyNode): TallyNode[] {
  return [node, ...node.children.flatMap(flatten)];
}

function numbersOf(
  root: TallyNode,
  printed: ReadonlyMap<string, number>,
  step: number,
): Map<string, TalliedNumber> {
  return new Map(
    flatten(root).map((node) => {
      const number = printed.get(node.id) ?? nearest(node.value, step);
      return [node.id, { printed: number, onlyByRounding: !meetsBound(node, number, step) }];
    }),
  );
}

function meetsBound(node: TallyNode, printed: number, step: number): boolean {
  return (
    settled(printed + step / 2) >= settled(node.low) &&
    settled(printed - step / 2) <= settled(node.high)
  );
}

function best(root: TallyNode, step: number, strict: boolean): Choice | null {
  const choices = [...choicesOf(root, step, strict).values()];
  const rootMiss = (choice: Choice) => choice.misses[0] ?? 0;
  return choices.reduce<Choice | null>((found, choice) => {
    if (!found) return choice;
    const difference = settled(rootMiss(choice) - rootMiss(found));
    if (difference !== 0) return difference < 0 ? choice : found;
    return better(choice, found) ? choice : found;
  }, null);
}

/** The best choice for each number of steps that the node can be printed as. */
function choicesOf(node: TallyNode, step: number, strict: boolean): Map<number, Choice> {
  const sums = combine(node.children.map((child) => choicesOf(child, step, strict)));
  const result = new Map<number, Choice>();
  for (const steps of candidates(node, step)) {
    const below = node.children.length === 0 ? NO_CHILDREN : sums.get(steps);
    const printed = settled(steps * step);
    if (!below || (strict && !meetsBound(node, printed, step))) continue;
    const miss = settled(Math.abs(printed - node.value));
    result.set(steps, {
      cost: settled(below.cost + miss),
      misses: [miss, ...below.misses],
      printed: [[node.id, printed], ...below.printed],
    });
  }
  return result;
}

const NO_CHILDREN: Choice = { cost: 0, misses: [], printed: [] };

function candidates(node: TallyNode, step: number): number[] {
  if (node.fixed !== null) {
    const steps = settled(node.fixed / step);
    return Number.isInteger(steps) ? [steps] : [];
  }
  const steps = settled(node.value / step);
  const floor = Math.floor(steps);
  return floor === steps ? [floor] : [floor, floor + 1];
}

function combine(children: readonly ReadonlyMap<number, Choice>[]): Map<number, Choice> {
  let sums = new Map<number, Choice>([[0, NO_CHILDREN]]);
  for (const child of children) {
    const next = new Map<number, Choice>();
    for (const [sum, left] of sums) {
      for (const [steps, right] of child) {
        const joined: Choice = {
          cost: settled(left.cost + right.cost),
          misses: [...left.misses, ...right.misses],
          printed: [...left.printed, ...right.printed],
        };
        const known = next.get(sum + steps);
        if (!known || better(joined, known)) next.set(sum + steps, joined);
      }
    }
    sums = next;
  }
  return sums;
}

/** Lower cost; at equal cost the earlier number misses less. */
function better(a: Choice, b: Choice): boolean {
  const difference = settled(a.cost - b.cost);
  if (difference !== 0) return difference < 0;
  for (const [index, miss] of a.misses.entries()) {
    const other = b.misses[index] ?? 0;
    if (miss !== other) return miss < other;
  }
  return false;
}
