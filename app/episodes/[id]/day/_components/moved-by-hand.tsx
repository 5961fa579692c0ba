'use client';

import { useRouter } from 'next/navigation';
import { useRef, useState, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';
import { isDrag, minutesDragged, movedTo, pixelsOf } from '../../../../_ui/geometry';
import { clockText } from '#lib/shoot/day-words';
import { withDay } from '../asked-day';

interface Held {
  readonly block: HTMLElement;
  readonly stepId: string;
  readonly startMin: number;
  readonly y: number;
  readonly byMin: number;
}

/** The address that says what a pin costs, but for the step and the time: `…?pin=STEP&when=…&to=MIN`. */
interface Props {
  readonly href: string;
  /** The filming day that it names, where the episode has several. */
  readonly dayId: string | null;
  readonly children: ReactNode;
}

const STEP_MIN = 5;

/**
 * Blocks of the day that are moved by hand: dragged, or with Alt and the arrow keys and then Enter. Moving alone changes
 * nothing: it leads to what that would cost.
 */
export function MovedByHand({ href, dayId, children }: Props) {
  const router = useRouter();
  const [held, setHeld] = useState<Held | null>(null);
  const dragged = useRef(false);

  const take = (target: EventTarget, y: number): Held | null => {
    const block = target instanceof Element ? target.closest<HTMLElement>('[data-step]') : null;
    if (block === null) return null;
    const { step, start } = block.dataset;
    return { block, stepId: step ?? '', startMin: Number(start), y, byMin: 0 };
  };
  const show = (now: Held): void => {
    now.block.style.transform = `translateY(${pixelsOf(now.byMin, rem())}px)`;
    now.block.style.position = 'relative';
    now.block.style.zIndex = '20';
    setHeld(now);
  };
  const letGo = (): void => {
    held?.block.removeAttribute('style');
    setHeld(null);
  };
  const ask = ({ stepId, startMin, byMin }: Held): void => {
    const to = movedTo(startMin, byMin);
    const when = byMin < 0 ? 'notAfter' : 'notBefore';
    const asked = new URLSearchParams({ pin: stepId, when, to: String(to) });
    router.push(withDay(`${href}?${asked.toString()}#pinned`, dayId));
    letGo();
  };

  const onPointerDown = (event: PointerEvent): void => {
    dragged.current = false;
    // A finger scrolls the day; it moves a step from the list beside.
    if (event.button !== 0 || event.pointerType === 'touch') return;
    setHeld(take(event.target, event.clientY));
  };
  const onPointerMove = (event: PointerEvent): void => {
    if (held === null || event.buttons === 0) return;
    const pixels = event.clientY - held.y;
    if (!dragged.current && !isDrag(pixels)) return;
    dragged.current = true;
    show({ ...held, byMin: minutesDragged(pixels, rem()) });
  };
  const onPointerUp = (): void => {
    if (held === null) return;
    if (dragged.current && held.byMin !== 0) ask(held);
    else letGo();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const block = take(event.target, 0);
    if (block === null) return;
    const by = { ArrowUp: -STEP_MIN, ArrowDown: STEP_MIN }[event.key];
    const now = held?.block === block.block ? held : block;
    if (by !== undefined && event.altKey) {
      event.preventDefault();
      show({ ...now, byMin: now.byMin + by });
    } else if (event.key === 'Enter' && now.byMin !== 0) {
      event.preventDefault();
      ask(now);
    } else if (event.key === 'Escape') letGo();
  };

  return (
    <div
      role="presentation"
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerLeave={letGo}
      onKeyDown={onKeyDown}
      onClickCapture={(event) => {
        if (dragged.current) event.preventDefault();
      }}
    >
      {children}
      <p aria-live="polite" className="mt-2 min-h-6 text-fine text-soft">
        {held === null || held.byMin === 0
          ? 'To move a step, drag it, or press Alt and an arrow key on it and then Enter: you see what it costs first.'
          : `To ${clockText(movedTo(held.startMin, held.byMin))}. Let go, or press Enter, to see what that costs.`}
      </p>
    </div>
  );
}

function rem(): number {
  return Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
}
