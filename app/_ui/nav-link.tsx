'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import type { ReactNode } from 'react';

interface Props {
  readonly href: string;
  /** Stays marked on the pages below it. */
  readonly alsoBelow?: string;
  readonly children: ReactNode;
}

/** A link of the navigation; the page one is on is underlined and said to be the current one. */
export function NavLink({ href, alsoBelow, children }: Props) {
  const path = usePathname();
  const here = path === href || (alsoBelow !== undefined && path.startsWith(alsoBelow));
  return (
    <Link
      href={href}
      aria-current={here ? 'page' : undefined}
      className="inline-flex min-h-11 items-center whitespace-nowrap border-b-[3px] border-transparent font-slate text-[1.1875rem] font-semibold tracking-[0.01em] md:text-lead md:tracking-[0.02em] hover:border-edge aria-[current=page]:border-ink"
    >
      {children}
    </Link>
  );
}
