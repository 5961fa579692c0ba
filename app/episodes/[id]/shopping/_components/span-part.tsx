import Link from 'next/link';
import { Button } from '../../../../_ui/button';
import { CONTROL } from '../../../../_ui/form/field';
import { Disclosure } from '../../../../_ui/disclosure';
import { printDay } from '#lib/units/print-date';
import type { AskedList } from '../scope';

interface Props {
  readonly path: string;
  readonly asked: AskedList;
  /** The filming day of the list, which a span begins with where nothing was chosen. */
  readonly date: string | null;
}

/** One list for this episode, or for all that are filmed from one day to another. */
export function SpanPart({ path, asked, date }: Props) {
  const { span, fault } = asked;
  const fields = [
    ['from', 'First filming day', span?.from ?? date ?? ''],
    ['to', 'Last filming day', span?.to ?? date ?? ''],
  ] as const;
  return (
    <div className="mb-4 print:hidden">
      {span && (
        <p className="mb-2">
          For all episodes filmed {printDay(span.from)} to {printDay(span.to)}.{' '}
          <Link className="link inline-flex min-h-11 items-center" href={path}>
            This episode alone
          </Link>
        </p>
      )}
      <Disclosure words="One list for several episodes" open={span !== null || fault !== null}>
        <form action={path} method="get" className="flex flex-wrap items-end gap-3">
          {fields.map(([name, label, initial]) => (
            <div key={name}>
              <label htmlFor={`span-${name}`} className="mb-1 block font-semibold">
                {label}
              </label>
              <input
                id={`span-${name}`}
                name={name}
                type="date"
                required
                className={CONTROL}
                defaultValue={initial}
              />
            </div>
          ))}
          <Button>Make one list</Button>
        </form>
        {fault && (
          <p role="alert" className="mt-2 font-semibold text-hand">
            {fault}
          </p>
        )}
      </Disclosure>
    </div>
  );
}
