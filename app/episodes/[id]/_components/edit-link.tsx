import Link from 'next/link';

interface Props {
  readonly href: string;
  /** Names what is edited, for what reads aloud. */
  readonly what: string;
  readonly children?: string;
}

/** Leads to a row's form. */
export function EditLink({ href, what, children = 'Edit' }: Props) {
  return (
    <Link
      href={href}
      scroll={false}
      data-opens
      className="link inline-flex min-h-6 items-center text-fine print:hidden"
    >
      {children}
      <span className="unseen"> {what}</span>
    </Link>
  );
}
