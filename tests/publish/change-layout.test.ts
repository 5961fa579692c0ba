import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BLOCK_KINDS, DISH_PARTS, layoutSchema } from '#lib/episode/publish-schema';
import { changedLayout, type LayoutChange } from '#lib/publish/description/change-layout';
import { ALWAYS_SHOWN, DEFAULT_LAYOUT, houseLayout } from '#lib/publish/description/layout';

const change: fc.Arbitrary<LayoutChange> = fc.oneof(
  fc.record({
    what: fc.constantFrom('up' as const, 'down' as const, 'show' as const, 'hide' as const),
    part: fc.constantFrom(...BLOCK_KINDS, ...DISH_PARTS),
  }),
  fc.record({ what: fc.constant('limit' as const), limit: fc.integer({ min: 100, max: 100_000 }) }),
);
const after = (...changes: LayoutChange[]) =>
  changes.reduce((layout, each) => changedLayout(layout, each), DEFAULT_LAYOUT);

describe('a layout that is changed', () => {
  it('keeps every part once, and what must never be missing', () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 30 }), (changes) => {
        const layout = after(...changes);
        expect(layoutSchema.safeParse(layout).success).toBe(true);
        expect(layout.blocks.map(({ kind }) => kind).sort()).toEqual([...BLOCK_KINDS].sort());
        expect(new Set(layout.dish).size).toBe(layout.dish.length);
        for (const kind of ALWAYS_SHOWN) {
          expect(layout.blocks).toContainEqual({ kind, shown: true });
        }
      }),
    );
  });

  it('goes up and down by one place, and back', () => {
    const kinds = (...changes: LayoutChange[]) => after(...changes).blocks.map(({ kind }) => kind);
    const up = { what: 'up', part: 'day' } as const;
    expect(kinds(up).indexOf('day')).toBe(BLOCK_KINDS.indexOf('day') - 1);
    expect(kinds(up, { what: 'down', part: 'day' })).toEqual([...BLOCK_KINDS]);
    expect(kinds({ what: 'up', part: 'title' })).toEqual([...BLOCK_KINDS]);
    expect(kinds({ what: 'down', part: 'sources' })).toEqual([...BLOCK_KINDS]);
  });

  it('takes a part of a dish out and puts it back where it stood', () => {
    const out = after({ what: 'hide', part: 'method' });
    expect(out.dish).not.toContain('method');
    expect(changedLayout(out, { what: 'show', part: 'method' }).dish).toEqual([...DISH_PARTS]);
  });

  it('of an earlier time gets what it does not know where that stands by default', () => {
    const blocks = [
      { kind: 'sources' as const, shown: false },
      { kind: 'title' as const, shown: true },
      { kind: 'allergens' as const, shown: false },
    ];
    const layout = houseLayout({ ...DEFAULT_LAYOUT, blocks });
    const kinds = layout.blocks.map(({ kind }) => kind);
    expect(kinds.indexOf('hook')).toBe(kinds.indexOf('title') + 1);
    expect(layout.blocks).toContainEqual({ kind: 'sources', shown: false });
    expect(layout.blocks).toContainEqual({ kind: 'allergens', shown: true });
  });
});
