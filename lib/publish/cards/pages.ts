import type { Block } from '#lib/publish/cards/blocks';

/** What one picture of a card shows under its head. */
export interface Page {
  readonly height: number;
  readonly draw: (x: number, y: number) => string;
}

/** The parts of a card under its head. */
export interface Parts {
  /** Stands on the first picture, whole. */
  readonly first: readonly Block[];
  readonly say: readonly Block[];
  readonly rows: readonly Block[];
  readonly notes: readonly Block[];
  readonly columns: number;
  /** Of all, and of one column. */
  readonly width: number;
  readonly column: number;
  /** How high a page is at most. */
  readonly most: number;
}

/** Above and below, and between parts of different kinds. */
const PAD = 26;
const GAP = 22;

/** A run of parts of one kind that stand side by side in columns, or one under the other. */
interface Run {
  readonly kind: 'first' | 'say' | 'rows' | 'notes';
  readonly blocks: readonly Block[];
}

/**
 * The parts of a card on as few pages as they take, lists spread evenly over them.
 * Law: every part is on one page, in order. A part that is higher than a page has one to itself.
 */
export function pagesOf(parts: Parts): readonly Page[] {
  const fewest = filled(parts, parts.most);
  let [low, high] = [0, parts.most];
  while (fewest.length > 1 && high - low > 4) {
    const middle = (low + high) / 2;
    if (filled(parts, middle).length <= fewest.length) high = middle;
    else low = middle;
  }
  const runs = fewest.length > 1 ? filled(parts, high) : fewest;
  return runs.map((each) => page(each, parts));
}

/** Whether all of a card fits on one page. */
export function fitsOne(parts: Parts): boolean {
  return filled(parts, parts.most).length === 1;
}

function filled(parts: Parts, most: number): Run[][] {
  const pages: Run[][] = [[]];
  const put = (kind: Run['kind'], block: Block) => {
    const last = pages.at(-1) ?? [];
    const tried = added(last, kind, block);
    if (last.length === 0 || heightOf(tried, parts) <= most) pages[pages.length - 1] = tried;
    else pages.push([{ kind, blocks: [block] }]);
  };
  for (const kind of ['first', 'say', 'rows', 'notes'] as const) {
    for (const block of parts[kind]) put(kind, block);
  }
  return pages;
}

function added(runs: readonly Run[], kind: Run['kind'], block: Block): Run[] {
  const last = runs.at(-1);
  if (last?.kind !== kind) return [...runs, { kind, blocks: [block] }];
  return [...runs.slice(0, -1), { kind, blocks: [...last.blocks, block] }];
}

function heightOf(runs: readonly Run[], parts: Parts): number {
  if (runs.length === 0) return 0;
  const heights = runs.map((run) => runHeight(run, parts));
  return heights.reduce((sum, height) => sum + height + GAP, 2 * PAD - GAP);
}

function runHeight({ kind, blocks }: Run, parts: Parts): number {
  const height = (of: readonly Block[], width: number) =>
    of.reduce((sum, block) => sum + block.height(width), 0);
  if (kind === 'first') return height(blocks, parts.width) + (blocks.length - 1) * GAP;
  if (kind !== 'rows') return height(blocks, parts.width);
  return Math.max(...columnsOf(blocks, parts).map((each) => height(each, parts.column)));
}

/** Rows in columns that are as low as can be, the order going down each. */
function columnsOf(blocks: readonly Block[], { columns, column }: Parts): (readonly Block[])[] {
  if (columns === 1) return [blocks];
  const heights = blocks.map((block) => block.height(column));
  const whole = heights.reduce((sum, each) => sum + each, 0);
  let above = 0;
  const cuts = heights.map((height) => {
    above += height;
    return Math.max(above, whole - above);
  });
  const cut = cuts.indexOf(Math.min(...cuts)) + 1;
  return [blocks.slice(0, cut), blocks.slice(cut)];
}

function page(runs: readonly Run[], parts: Parts): Page {
  return {
    height: heightOf(runs, parts),
    draw: (x, y) => {
      let top = y + PAD;
      return runs
        .map((run) => {
          const drawn = drawRun(run, parts, x, top);
          top += runHeight(run, parts) + GAP;
          return drawn;
        })
        .join('');
    },
  };
}

function drawRun(run: Run, parts: Parts, x: number, y: number): string {
  const { width, column } = parts;
  if (run.kind !== 'rows') {
    return stacked(run.blocks, x, y, width, run.kind === 'first' ? GAP : 0);
  }
  const step = parts.columns > 1 ? width - column : 0;
  return columnsOf(run.blocks, parts)
    .map((blocks, index) => stacked(blocks, x + index * step, y, column, 0))
    .join('');
}

function stacked(blocks: readonly Block[], x: number, y: number, width: number, gap: number) {
  let top = y;
  return blocks
    .map((block, index) => {
      const rule = blocks[index - 1]?.rule?.(x, top, width) ?? '';
      const drawn = rule + block.draw(x, top, width);
      top += block.height(width) + gap;
      return drawn;
    })
    .join('');
}
