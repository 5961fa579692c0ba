import Link from 'next/link';
import { Button } from '../../../../_ui/button';

interface Props {
  readonly submit: string;
  readonly cancelHref: string;
  readonly pending: boolean;
}

/** Ends a row's form: saves it, or leaves the row as it was. */
export function FormEnd({ submit, cancelHref, pending }: Props) {
  return (
    <p className="flex flex-wrap items-center gap-3">
      <Button tone="go" aria-disabled={pending || undefined}>
        {submit}
      </Button>
      <Link href={cancelHref} className="link inline-flex min-h-14 items-center px-2">
        Leave as it was
      </Link>
    </p>
  );
}
