'use client';

import { Button } from './button';

/** Opens the browser's own print dialog. */
export function PrintButton({ children }: { readonly children: string }) {
  return (
    <span className="print:hidden">
      <Button type="button" onClick={() => window.print()}>
        {children}
      </Button>
    </span>
  );
}
