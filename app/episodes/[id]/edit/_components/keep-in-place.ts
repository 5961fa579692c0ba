/** Frames in which rows around an element find their heights. */
const FRAMES = 12;

/**
 * Keeps what was pressed where it is in the window while rows around it open and close: the list it stands in is moved
 * by as much as it was.
 */
export function keepInPlace(element: HTMLElement): void {
  const box = element.closest('[data-rows-box]') ?? window;
  const wanted = element.getBoundingClientRect().top;
  let left = FRAMES;
  const settle = () => {
    if (!element.isConnected) return;
    const moved = element.getBoundingClientRect().top - wanted;
    if (moved > 1 || moved < -1) box.scrollBy(0, moved);
    left -= 1;
    if (left > 0) requestAnimationFrame(settle);
  };
  requestAnimationFrame(settle);
}
