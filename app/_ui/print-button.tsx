'use client';

import { Button } from './button';
import { Icon } from './icons';

/** Opens the browser's own print dialog. */
export function PrintButton({ children }: { readonly children: string }) {
  return (
    <span className="print:hidden">
      <Button type="button" onClick={() => window.print()}>
        <Icon name="print" />
        {children}
      </Button>
    </span>
  );
}
