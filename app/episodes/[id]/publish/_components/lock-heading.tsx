'use client';

import { useEffect, useRef } from 'react';

const ID = 'numbers-lock';

/** The heading that links to the lock lead to: who comes by one has the focus there, from whatever page. */
export function LockHeading() {
  const element = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // The router scrolls to it and leaves the focus where it was.
    if (window.location.hash === `#${ID}`) element.current?.focus({ preventScroll: true });
  }, []);
  return (
    <h2 ref={element} id={ID} tabIndex={-1}>
      Numbers lock
    </h2>
  );
}
