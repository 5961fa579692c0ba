import type { ReactNode } from 'react';
import { PROVISIONAL } from './provisional';
import { ScrollRegion } from './scroll-region';

interface Props {
  /** Says what the table holds; seen only where `showCaption` is set. */
  readonly caption: string;
  readonly showCaption?: boolean;
  readonly head: ReactNode;
  /** For many short rows. */
  readonly tight?: boolean;
  /** On a phone each row stands as a line of words over its numbers; cells then say their units. */
  readonly stacks?: boolean;
  /** Printed small, with rows close together, so that a dish stays on one page. */
  readonly close?: boolean;
  readonly children: ReactNode;
}

const CLOSE = 'print:text-[9pt] print:leading-tight print:[&_:is(td,th)]:py-0.5';

/** A ruled table: a strong line under the heads, hairlines between rows. A wide one scrolls in itself. */
export function Table({
  caption,
  showCaption = false,
  head,
  tight = false,
  stacks = false,
  close = false,
  children,
}: Props) {
  return (
    <ScrollRegion label={caption}>
      <table
        className={`w-full border-collapse ${tight ? '[&_:is(td,th)]:py-1' : ''} ${stacks ? 'stacks' : ''} ${close ? CLOSE : ''}`}
      >
        <caption
          className={showCaption ? 'pb-2 text-left font-slate text-head font-semibold' : 'unseen'}
        >
          {caption}
        </caption>
        <thead>
          <tr className="border-b-[1.5px] border-ink">{head}</tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </ScrollRegion>
  );
}

interface CellProps {
  readonly children?: ReactNode;
  /** Numbers stand at the right, so that their digits line up. */
  readonly number?: boolean;
  /** Left out where the page is narrow; what it says must stand elsewhere then. */
  readonly side?: boolean;
}

/** The head of a column. */
export function Th({ children, number = false, side = false }: CellProps) {
  return (
    <th
      scope="col"
      className={`lettering py-1.5 pr-3 align-bottom text-fine text-soft last:pr-0 ${number ? 'text-right' : 'text-left'} ${side ? 'max-md:hidden' : ''}`}
    >
      {children}
    </th>
  );
}

/** A row; an open one is hatched, a provisional one the other way, and its words say which it is. */
export function Tr({
  children,
  open = false,
  provisional = false,
  id,
}: {
  readonly children: ReactNode;
  readonly open?: boolean;
  readonly provisional?: boolean;
  /** Where an address leads to the row. */
  readonly id?: string;
}) {
  const ground = open ? 'hatch' : provisional ? PROVISIONAL : '';
  return (
    <tr id={id} className={`border-b border-line ${ground}`}>
      {children}
    </tr>
  );
}

/** A cell. */
export function Td({ children, number = false, side = false }: CellProps) {
  return (
    <td
      className={`py-2 pr-3 align-top last:pr-0 ${number ? 'text-right whitespace-nowrap' : ''} ${side ? 'max-md:hidden' : ''}`}
    >
      {children}
    </td>
  );
}

/** The cell that names its row. */
export function RowHead({ children }: { readonly children: ReactNode }) {
  return (
    <th scope="row" className="py-2 pr-3 text-left align-top font-normal">
      {children}
    </th>
  );
}
