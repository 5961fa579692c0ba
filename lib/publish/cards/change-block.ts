import { LEADING, type Block, type Type } from '#lib/publish/cards/blocks';
import type { CardChange } from '#lib/publish/cards/card';
import type { PartInks } from '#lib/publish/cards/inks';
import { pencil, wide, words } from '#lib/publish/cards/paint';

const HEDGED = /^(at least|at most|about) (.+)$/;

/** The old value struck through by hand, and the new one. */
export function changeBlock(
  { before, after, unit }: CardChange,
  type: Type,
  inks: PartInks,
): Block {
  const unitSize = Math.max(type.small, type.lead * 0.42);
  const part = (value: string, size: number, ink: string, asideSize: number) => {
    const [, hedge = '', number = value] = HEDGED.exec(value) ?? [];
    const figure = { size, face: 'text', ink } as const;
    const aside = { size: asideSize, face: 'text', ink } as const;
    const gap = asideSize * 0.26;
    const before = hedge === '' ? 0 : wide(hedge, aside) + gap;
    const own = before + wide(number, figure);
    const whole = own + (unit === '' ? 0 : gap + wide(unit, aside));
    return { figure, aside, hedge, number, before, gap, own, whole };
  };
  const old = part(before, type.big, inks.soft, type.small);
  const fresh = part(after, type.lead, inks.ink, unitSize);
  const between = 44;
  const beside = old.whole + between + fresh.whole;
  const isBeside = (width: number) => beside <= width;
  const drawPart = (of: typeof old, x: number, y: number) =>
    [
      words(of.hedge, x, y, of.aside, inks),
      words(of.number, x + of.before, y, of.figure, inks),
      words(unit, x + of.own + of.gap, y, of.aside, inks),
    ].join('');
  const base = type.lead * 0.78;
  return {
    natural: beside,
    least: Math.max(old.whole, fresh.whole),
    height: (width) => base + type.lead * 0.16 + (isBeside(width) ? 0 : type.big * LEADING),
    draw: (x, y, width) => {
      const aside = isBeside(width);
      const oldBase = aside ? y + base : y + type.big * 0.86;
      const newBase = aside ? y + base : y + type.big * LEADING + base;
      return [
        drawPart(old, x, oldBase),
        pencil(x - 6, oldBase - type.big * 0.3, old.whole + 12, inks, inks),
        drawPart(fresh, aside ? x + old.whole + between : x, newBase),
      ].join('');
    },
  };
}
