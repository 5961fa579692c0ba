'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';

/** What the search has found so far, as it goes on; the page shows the new order when it is over. */
export function SearchProgress({
  address,
  first,
}: {
  readonly address: string;
  readonly first: string;
}) {
  const router = useRouter();
  const [words, setWords] = useState(first);
  useEffect(() => {
    const source = new EventSource(address);
    source.addEventListener('progress', ({ data }: MessageEvent<string>) => setWords(data));
    source.addEventListener('over', () => {
      source.close();
      router.refresh();
    });
    return () => source.close();
  }, [address, router]);
  return (
    <>
      <span role="status">{words}</span>
      <noscript>Open the page again to see what it has found.</noscript>
    </>
  );
}
