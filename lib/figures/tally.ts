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
  /** Spoken numbers that the others cannot give way to, in order; empty where everything adds up. */
  readonly clashing: readonly string[];
}

/** One way to print a subtree, with its cost: Σ|p − v| and the misses of each node in order. */
interface Choice {
  /** Spoken numbers left out of the sums. */
  readonly clashing: readonly string[];
  readonly cost: number;
  readonly misses: readonly number[];
  /** What each node counts as in its parent's sum. */
  readonly printed: readonly (readonly [string, number])[];
}

/** What a choice must keep to. */
interface Rules {
  readonly step: number;
  /** Whether a number that is not spoken stays inside its hard bound, widened by half a step. */
  readonly bounds: boolean;
  /** Whether a spoken number may be left out of the sums. */
  readonly release: boolean;
}

/**
 * Prints a tree of numbers in multiples of a step so that children add up to their parents: each number is one
 * of its two neighbours (a spoken one is what was said), with the least change at the root, then the least
 * Σ|printed − value|, then the least change of the earlier numbers; exact, by dynamic programming over the tree.
 * Choosing floor or ceiling so that all sums hold is controlled rounding (L. H. Cox, "A constructive procedure
 * for unbiased controlled rounding", J. Am. Stat. Assoc. 82, 1987 [from memory]); on one level, where no bound
 * binds, it is the method of largest remainders.
 *
 * First with every number that can still be chosen inside its hard bound widened by half a step. If there is no
 * such choice, without that, and the numbers concerned say so. If spoken numbers make even that impossible, the
 * fewest of them are left out of the sums and named in `clashing`; they are printed as they were said.
 *
 * @param step what to round to, in the unit of the values
 * @example children 1.4 and 1.4 under 2.8, step 1: prints 3 = 1 + 2 (the later one gives way)
 */
export function tally(root: TallyNode, step: number): Tally {
  const choice =
    best(root, { step, bounds: true, release: false }) ??
    best(root, { step, bounds: false, release: false }) ??
    fewestLeftOut(root, step);
  const clashing = new Set(choice.clashing);
  const printed = new Map(choice.printed);
  const numbers = flatten(root).map((node): [string, TalliedNumber] => {
    const counted = printed.get(node.id) ?? node.value;
    const number = clashing.has(node.id) ? (node.fixed ?? counted) : counted;
    return [node.id, { printed: number, onlyByRounding: !meetsBound(node, number, step) }];
  });
  return {
    addsUp: clashing.size === 0,
    numbers: new Map(numbers),
    clashing: flatten(root).flatMap(({ id }) => (clashing.has(id) ? [id] : [])),
  };
}

/** Bounds are kept where that leaves out no more of what was spoken. */
function fewestLeftOut(root: TallyNode, step: number): Choice {
  const loose = best(root, { step, bounds: false, release: true });
  if (!loose) throw new Error(`${root.id} is not the sum of its children`);
  const strict = best(root, { step, bounds: true, release: true });
  return strict && strict.clashing.length === loose.clashing.length ? strict : loose;
}

function flatten(node: TallyNode): TallyNode[] {
  return [node, ...node.children.flatMap(flatten)];
}

function meetsBound(node: TallyNode, printed: number, step: number): boolean {
  return (
    settled(printed + step / 2) >= settled(node.low) &&
    settled(printed - step / 2) <= settled(node.high)
  );
}

function best(root: TallyNode, rules: Rules): Choice | null {
  const choices = [...choicesOf(root, rules).values()];
  const rootMiss = (choice: Choice) => choice.misses[0] ?? 0;
  return choices.reduce<Choice | null>((found, choice) => {
    if (!found) return choice;
    const difference =
      choice.clashing.length - found.clashing.length || settled(rootMiss(choice) - rootMiss(found));
    if (difference !== 0) return difference < 0 ? choice : found;
    return better(choice, found) ? choice : found;
  }, null);
}

/** The best choice for each number of steps that the node can count as. */
function choicesOf(node: TallyNode, rules: Rules): Map<number, Choice> {
  const { step } = rules;
  const sums = combine(node.children.map((child) => choicesOf(child, rules)));
  const result = new Map<number, Choice>();
  for (const { steps, clashes } of candidates(node, rules)) {
    const below = node.children.length === 0 ? NO_CHILDREN : sums.get(steps);
    if (!below) continue;
    const printed = settled(steps * step);
    const miss = settled(Math.abs(printed - node.value));
    const choice: Choice = {
      clashing: clashes ? [node.id, ...below.clashing] : below.clashing,
      cost: settled(below.cost + miss),
      misses: [miss, ...below.misses],
      printed: [[node.id, printed], ...below.printed],
    };
    const known = result.get(steps);
    if (!known || better(choice, known)) result.set(steps, choice);
  }
  return result;
}

const NO_CHILDREN: Choice = { clashing: [], cost: 0, misses: [], printed: [] };

interface Candidate {
  readonly steps: number;
  /** A spoken number that counts as something else than was said. */
  readonly clashes: boolean;
}

function candidates(node: TallyNode, { step, bounds, release }: Rules): Candidate[] {
  const steps = settled(node.value / step);
  const floor = Math.floor(steps);
  const neighbours = (floor === steps ? [floor] : [floor, floor + 1])
    .filter((each) => !bounds || meetsBound(node, settled(each * step), step))
    .map((each): Candidate => ({ steps: each, clashes: node.fixed !== null }));
  if (node.fixed === null) return neighbours;
  const said = settled(node.fixed / step);
  // Said in finer or other steps: nothing that is printed in these can add up with it.
  const standing = Number.isInteger(said) ? [{ steps: said, clashes: false }] : [];
  return release ? [...standing, ...neighbours] : standing;
}

function combine(children: readonly ReadonlyMap<number, Choice>[]): Map<number, Choice> {
  let sums = new Map<number, Choice>([[0, NO_CHILDREN]]);
  for (const child of children) {
    const next = new Map<number, Choice>();
    for (const [sum, left] of sums) {
      for (const [steps, right] of child) {
        const joined: Choice = {
          clashing: [...left.clashing, ...right.clashing],
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

/** Fewer spoken numbers left out; then lower cost; at equal cost the earlier number misses less. */
function better(a: Choice, b: Choice): boolean {
  const difference = a.clashing.length - b.clashing.length || settled(a.cost - b.cost);
  if (difference !== 0) return difference < 0;
  for (const [index, miss] of a.misses.entries()) {
    const other = b.misses[index] ?? 0;
    if (miss !== other) return miss < other;
  }
  return false;
}
