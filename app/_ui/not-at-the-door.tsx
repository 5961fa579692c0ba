'use client';

import { usePathname } from 'next/navigation';
import type { ReactNode } from 'react';

/** What is of no use to a device that is not let in yet. */
export function NotAtTheDoor({ children }: { readonly children: ReactNode }) {
  return usePathname() === '/pair' ? null : children;
}
