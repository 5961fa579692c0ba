import { allowedTypos, BEGINNING_WITH_TYPOS_FROM, QUALITY } from '#lib/foods/match-word';

interface Node {
  readonly letters: Map<string, Node>;
  /** Numbers of the words whose form ends here. */
  readonly ends: number[];
  /** How many letters lead here. */
  readonly depth: number;
}

/** A tree of letters over the forms of all words, walked with a row of edit distances. */
export interface WordTrie {
  readonly root: Node;
}

function emptyNode(depth: number): Node {
  return { letters: new Map(), ends: [], depth };
}

/** Builds the tree from forms and the number of the word that each belongs to. */
export function buildWordTrie(forms: Iterable<readonly [form: string, word: number]>): WordTrie {
  const root = emptyNode(0);
  for (const [form, word] of forms) {
    let node = root;
    for (const letter of form) {
      let next = node.letters.get(letter);
      if (!next) {
        next = emptyNode(node.depth + 1);
        node.letters.set(letter, next);
      }
      node = next;
    }
    if (!node.ends.includes(word)) node.ends.push(word);
  }
  return { root };
}

/**
 * Every word of which a form matches a typed word, with its best quality: the same answers as `matchWord`
 * gives form by form, without looking at the forms that cannot match.
 */
export function matchingWords(
  trie: WordTrie,
  typed: string,
  isLast: boolean,
  typos: boolean,
): Map<number, number> {
  const found = new Map<number, number>();
  const keep = (word: number, quality: number) => {
    if (quality > (found.get(word) ?? 0)) found.set(word, quality);
  };
  const exact = descend(trie.root, typed);
  if (exact) {
    for (const word of exact.ends) keep(word, QUALITY.same);
    if (isLast) keepBelow(exact, typed.length, keep);
  }
  const allowed = typos ? allowedTypos(typed.length) : 0;
  if (allowed > 0) walkWithTypos(trie.root, typed, allowed, isLast, keep);
  return found;
}

function descend(root: Node, typed: string): Node | null {
  let node: Node | undefined = root;
  for (const letter of typed) {
    node = node?.letters.get(letter);
    if (!node) return null;
  }
  return node ?? null;
}

function keepBelow(node: Node, typed: number, keep: (word: number, quality: number) => void): void {
  for (const next of node.letters.values()) {
    for (const word of next.ends) keep(word, QUALITY.beginning(typed, next.depth));
    keepBelow(next, typed, keep);
  }
}

/** Depth-first over the tree; a branch is left when every cell of its row is above what is allowed. */
function walkWithTypos(
  root: Node,
  typed: string,
  allowed: number,
  isLast: boolean,
  keep: (word: number, quality: number) => void,
): void {
  const beginnings = isLast && typed.length >= BEGINNING_WITH_TYPOS_FROM;
  const columns = typed.length;
  const width = columns + 1;
  // Rows of distances, one per letter of depth; deeper rows are written over, branch by branch.
  const rows = Array.from({ length: width }, (_, column) => column);

  const visit = (node: Node, letter: string, parent: string, leastAbove: number, best: number) => {
    const row = node.depth * width;
    rows[row] = node.depth;
    let least = node.depth;
    for (let column = 1; column <= columns; column += 1) {
      const at = row + column;
      const typedLetter = typed[column - 1];
      let cost = (rows[at - width - 1] ?? Infinity) + (letter === typedLetter ? 0 : 1);
      cost = Math.min(cost, (rows[at - width] ?? Infinity) + 1, (rows[at - 1] ?? Infinity) + 1);
      const swapped = node.depth > 1 && column > 1 && parent === typedLetter;
      if (swapped && letter === typed[column - 2]) {
        cost = Math.min(cost, (rows[at - 2 * width - 2] ?? Infinity) + 1);
      }
      rows[at] = cost;
      if (cost < least) least = cost;
    }
    const whole = rows[row + columns] ?? Infinity;
    const nearest = Math.min(best, whole);
    for (const word of node.ends) {
      if (whole <= allowed) keep(word, QUALITY.typos(whole));
      else if (beginnings && nearest <= allowed) keep(word, QUALITY.beginningWithTypos(nearest));
    }
    // A swap can use the row above this one, so a branch ends only when both are too far.
    const alive = least <= allowed || leastAbove < allowed;
    if (!alive && !(beginnings && nearest <= allowed)) return;
    for (const [nextLetter, next] of node.letters) visit(next, nextLetter, letter, least, nearest);
  };

  for (const [letter, node] of root.letters) visit(node, letter, '', 0, columns);
}
