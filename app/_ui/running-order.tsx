import Link from 'next/link';
import type { ReactNode } from 'react';

export interface RunningOrderPart {
  readonly id: string;
  readonly kind: 'dish' | 'talk';
  readonly title: string;
  /** Planned length, which gives the stick its width. */
  readonly seconds: number;
  /** The length as read: "3:25". */
  readonly runtime: string;
  /** What else is known in a few words: "512 kcal". */
  readonly note?: ReactNode;
  readonly href?: string;
}

interface Props {
  readonly parts: readonly RunningOrderPart[];
  /** The whole length, as read. */
  readonly total: string;
  readonly note?: string;
}

/**
 * The running order as a strip of clapper sticks: each as wide as its part of the runtime, striped for a
 * dish, plain for talk. On a narrow page the sticks lie one above the other.
 */
export function RunningOrder({ parts, total, note }: Props) {
  return (
    <nav aria-label="Running order" className="mb-8">
      <ol className="flex flex-col gap-1 md:flex-row md:gap-[3px]">
        {parts.map((part) => (
          <li
            key={part.id}
            className="min-w-0 border-[1.5px] border-ink bg-raised md:min-w-20 md:basis-0"
            style={{ flexGrow: part.seconds }}
          >
            <Stick kind={part.kind} />
            <PartWords part={part} />
          </li>
        ))}
      </ol>
      <p className="mt-1.5 flex justify-between gap-4 text-fine text-soft">
        <span aria-hidden="true" className="max-md:hidden">
          0:00
        </span>
        {note && <span>{note}</span>}
        <span>
          <span className="unseen">planned length </span>
          {total}
        </span>
      </p>
    </nav>
  );
}

function Stick({ kind }: { readonly kind: RunningOrderPart['kind'] }) {
  return (
    <div
      aria-hidden="true"
      className={`h-2.5 border-b-[1.5px] border-ink ${kind === 'dish' ? 'sticks' : ''}`}
    />
  );
}

function PartWords({ part }: { readonly part: RunningOrderPart }) {
  const words = (
    <>
      <span className="block font-slate text-[1.1875rem] leading-[1.1] font-semibold">
        {part.title}
      </span>
      <span className="mt-0.5 block text-fine text-soft">
        <span className="unseen">{part.kind}, </span>
        {part.runtime}
        {part.note && <> · {part.note}</>}
      </span>
    </>
  );
  if (!part.href) return <div className="px-2.5 py-1.5">{words}</div>;
  return (
    <Link href={part.href} className="block px-2.5 py-1.5 hover:bg-paper">
      {words}
    </Link>
  );
}
