'use client';

import { useEffect, useRef } from 'react';

const ID = 'photos';

/**
 * The heading of the photos. Where the focus went with what was attached or taken out, it comes here, as it
 * does by the page's address without script.
 */
export function PhotosHeading({ state }: { readonly state: string }) {
  const element = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (window.location.hash !== `#${ID}`) return;
    const frame = requestAnimationFrame(() => {
      if (document.activeElement === document.body) element.current?.focus();
    });
    return () => cancelAnimationFrame(frame);
  }, [state]);
  return (
    <h2 ref={element} id={ID} tabIndex={-1} className="mb-2">
      Photo of the panel
    </h2>
  );
}
