import type { ReactNode } from 'react';
import type { Figure } from '#lib/figures/figure';
import { printFigure, type PrintedFigure } from '#lib/figures/print-figure';
import { Whisker } from './whisker';

interface Props {
  readonly figure: Figure;
  /** Rounding step of the print; by the nutrient's own digits if left out. */
  readonly step?: number;
  /** `large` where the number is the point of the page. */
  readonly size?: 'large' | 'usual';
  readonly note?: ReactNode;
}

/** The list that figures stand in, each named by its nutrient. */
export function FigureList({ children }: { readonly children: ReactNode }) {
  return <dl className="flex flex-wrap gap-x-8 gap-y-6">{children}</dl>;
}

/** A figure: the number with its unit, its whisker, its range in words. It takes a figure, never a number. */
export function FigureView({ figure, step, size = 'large', note }: Props) {
  const printed = printFigure(figure, step);
  return (
    <div className={size === 'large' ? 'w-44' : 'w-40'}>
      <dt className="lettering text-base text-soft">{printed.label}</dt>
      <dd>
        <Number printed={printed} size={size} />
        <Whisker figure={figure} />
        <span className="mt-1 block text-fine text-soft">{printed.range}</span>
        {note && <span className="block text-fine">{note}</span>}
      </dd>
    </div>
  );
}

function Number({
  printed,
  size,
}: {
  readonly printed: PrintedFigure;
  readonly size: 'large' | 'usual';
}) {
  const digits = size === 'large' ? 'text-figure' : 'text-title';
  if (printed.number === null) {
    return <span className={`block font-bold text-soft ${digits}`}>{printed.text}</span>;
  }
  const words = printed.text.slice(0, -printed.number.length).trim();
  return (
    <span className="flex items-baseline gap-1.5">
      {words && <span className="font-slate text-lead font-semibold">{words}</span>}
      <b className={`font-bold ${digits}`}>{printed.number}</b>
      <span>{printed.unit}</span>
    </span>
  );
}

/** A figure within a line of text or a table: its words and unit, its range on asking. */
export function FigureText({ figure, step }: { readonly figure: Figure; readonly step?: number }) {
  const printed = printFigure(figure, step);
  return (
    <span className="whitespace-nowrap" title={printed.range}>
      {printed.number === null ? printed.text : `${printed.text} ${printed.unit}`}
    </span>
  );
}
