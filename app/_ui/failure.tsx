'use client';

import { Button } from './button';

interface Props {
  readonly error: Error & { readonly digest?: string };
  readonly retry: () => void;
  readonly what: string;
}

/** What a page shows when the program itself failed: what to do, and what to quote. */
export function Failure({ error, retry, what }: Props) {
  return (
    <div role="alert" className="my-10 border-l-[6px] border-hand py-2 pl-5">
      <h1 className="text-title">{what}</h1>
      <p className="mt-3 max-w-[60ch]">
        Nothing that was saved is lost. Try again; if it stays so, the words below and the lines
        where the program was started say what happened.
      </p>
      <p className="mt-3 text-fine text-soft">
        {error.digest ? `Mark ${error.digest}` : error.message}
      </p>
      <div className="mt-4">
        <Button type="button" onClick={retry}>
          Try again
        </Button>
      </div>
    </div>
  );
}
