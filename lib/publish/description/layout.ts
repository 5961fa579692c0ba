import {
  BLOCK_KINDS,
  DISH_PARTS,
  type BlockKind,
  type DescriptionLayout,
} from '#lib/episode/publish-schema';

/** Length that description fields commonly allow (common practice, no source). */
export const DESCRIPTION_LIMIT = 5000;

/**
 * What is in every description, wherever it stands: people may be hurt or misled without it. Marks stand beside numbers,
 * so what they mean does too; a correction that went out is not taken back.
 */
export const ALWAYS_SHOWN: readonly BlockKind[] = [
  'notes',
  'allergens',
  'cautions',
  'disclosure',
  'corrections',
];

/**
 * How descriptions are laid out as long as nobody has said otherwise: with everything but swaps, which are long and
 * answer under a comment as well.
 */
export const DEFAULT_LAYOUT: DescriptionLayout = {
  blocks: BLOCK_KINDS.map((kind) => ({ kind, shown: kind !== 'swaps' })),
  dish: [...DISH_PARTS],
  limit: DESCRIPTION_LIMIT,
};

/**
 * The layout in use: the person's own, with every part in it. One that the layout does not know stands behind the part
 * that it follows by default; what must never be missing is shown whatever the layout says.
 */
export function houseLayout(layout: DescriptionLayout = DEFAULT_LAYOUT): DescriptionLayout {
  const blocks = layout.blocks.map(({ kind, shown }) => ({
    kind,
    shown: shown || ALWAYS_SHOWN.includes(kind),
  }));
  BLOCK_KINDS.forEach((kind, index) => {
    if (blocks.some((block) => block.kind === kind)) return;
    const before = BLOCK_KINDS[index - 1];
    const at = blocks.findIndex((block) => block.kind === before);
    blocks.splice(at + 1, 0, { kind, shown: kind !== 'swaps' });
  });
  return { ...layout, blocks };
}
