'use client';

import { unstable_rethrow } from 'next/navigation';
import { startTransition, useEffect, useRef, useState, type ReactNode } from 'react';
import { UNTOUCHED, type FormState } from '../form/form-state';
import { dropY, movedTo, placeUnder, type Extent } from './order';

interface Props {
  /** The members in their order; each is an element with `data-member`, and has a `MoveHandle`. */
  readonly ids: readonly string[];
  /** What each is called, in the same order. */
  readonly names: readonly string[];
  /** Writes one drop: it is sent `order`, the ids in their new order, and `moved`, which of them it was. */
  readonly action: (state: FormState, form: FormData) => Promise<FormState>;
  /** Sent with it: the rows that the list is about. */
  readonly hidden: Readonly<Record<string, string>>;
  readonly children: ReactNode;
}

interface Hold {
  readonly id: string;
  readonly place: number;
  readonly by: 'keys' | 'pointer';
}

const KEYS = 'Arrow keys choose the place, Enter drops, Escape puts back.';
/** Beyond this many pixels a press is a drag. */
const SLACK = 4;
/** Near the edge of the window the page scrolls on, so many pixels a step. */
const EDGE = 48;
const SCROLL = 14;

/**
 * A list whose members change places by drag, or by keys: Enter on a handle picks up, the arrows choose the
 * place, Enter drops, Escape puts back. Each is said aloud. One drop is one write.
 */
export function Reorder({ ids, names, action, hidden, children }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const [hold, setHold] = useState<Hold | null>(null);
  const [line, setLine] = useState<number | null>(null);
  const [said, setSaid] = useState('');
  const [fault, setFault] = useState('');
  const now = useRef({ ids, names, action, hidden, hold });
  const focusAfter = useRef<string | null>(null);

  useEffect(() => {
    now.current = { ids, names, action, hidden, hold };
  });

  const order = ids.join(' ');
  // A row that was moved in the document loses the focus: it goes back to the handle.
  useEffect(() => {
    const id = focusAfter.current;
    if (id === null) return;
    focusAfter.current = null;
    handleOf(box.current, id)?.focus();
  }, [order]);

  useEffect(() => {
    const element = box.current;
    if (!element) return;
    let pressed: { id: string; y: number; pointerId: number } | null = null;
    let dragged = false;

    const nameOf = (id: string) => now.current.names[now.current.ids.indexOf(id)] ?? '';
    const show = (next: Hold | null) => {
      now.current.hold = next;
      setHold(next);
      mark(element, next?.id ?? null);
      if (next === null) {
        setLine(null);
        return;
      }
      const y = dropY(extentsIn(element, now.current.ids), next.id, next.place);
      setLine(y - element.getBoundingClientRect().top);
    };
    const placeWords = (id: string, place: number) => {
      const count = now.current.ids.length;
      return `${nameOf(id)}: place ${place + 1} of ${count}.`;
    };
    const putBack = () => {
      const held = now.current.hold;
      if (!held) return;
      show(null);
      setSaid(`${nameOf(held.id)}: put back.`);
    };
    const drop = () => {
      const held = now.current.hold;
      if (!held) return;
      show(null);
      const next = movedTo(now.current.ids, held.id, held.place);
      if (next.join() === now.current.ids.join()) {
        setSaid(`${nameOf(held.id)}: stays where it was.`);
        return;
      }
      focusAfter.current = held.id;
      setFault('');
      setSaid(`Dropped. ${placeWords(held.id, held.place)}`);
      startTransition(async () => {
        const words = await sent(
          now.current.action,
          { ...now.current.hidden, moved: held.id },
          next,
        );
        if (words === '') return;
        focusAfter.current = null;
        setSaid('');
        setFault(words);
      });
    };
    const idOf = (target: EventTarget | null) =>
      target instanceof Element
        ? (target.closest<HTMLElement>('[data-move]')?.dataset.move ?? null)
        : null;

    const onKeyDown = (event: KeyboardEvent) => {
      const id = idOf(event.target);
      if (id === null) return;
      const held = now.current.hold;
      if (event.key === 'Enter' || event.key === ' ') {
        event.preventDefault();
        if (held) drop();
        else {
          const place = now.current.ids.indexOf(id);
          show({ id, place, by: 'keys' });
          setSaid(`Picked up. ${placeWords(id, place)} ${KEYS}`);
        }
        return;
      }
      if (!held) return;
      const last = now.current.ids.length - 1;
      const to: Readonly<Record<string, number>> = {
        ArrowUp: held.place - 1,
        ArrowDown: held.place + 1,
        Home: 0,
        End: last,
      };
      const wanted = to[event.key];
      if (event.key === 'Escape') {
        event.preventDefault();
        putBack();
      } else if (wanted !== undefined) {
        event.preventDefault();
        const place = Math.max(0, Math.min(wanted, last));
        show({ ...held, place });
        setSaid(placeWords(held.id, place));
      }
    };
    const onFocusOut = () => {
      if (now.current.hold?.by === 'keys') putBack();
    };
    const onPointerDown = (event: PointerEvent) => {
      const id = idOf(event.target);
      if (id === null || event.button !== 0) return;
      pressed = { id, y: event.clientY, pointerId: event.pointerId };
      dragged = false;
      handleOf(element, id)?.setPointerCapture(event.pointerId);
    };
    const onPointerMove = (event: PointerEvent) => {
      if (pressed?.pointerId !== event.pointerId) return;
      if (!dragged && Math.abs(event.clientY - pressed.y) < SLACK) return;
      dragged = true;
      if (event.clientY < EDGE) window.scrollBy(0, -SCROLL);
      if (event.clientY > window.innerHeight - EDGE) window.scrollBy(0, SCROLL);
      const place = placeUnder(extentsIn(element, now.current.ids), pressed.id, event.clientY);
      show({ id: pressed.id, place, by: 'pointer' });
    };
    const onPointerUp = () => {
      if (dragged) drop();
      pressed = null;
    };
    const onPointerCancel = () => {
      if (dragged) putBack();
      pressed = null;
    };
    const onClick = (event: MouseEvent) => {
      const id = idOf(event.target);
      // A drag ends with a click of its own.
      if (id === null || dragged) {
        dragged = false;
        return;
      }
      const held = now.current.hold;
      if (!held) {
        const place = now.current.ids.indexOf(id);
        show({ id, place, by: 'pointer' });
        setSaid(`Picked up. ${placeWords(id, place)} Press another handle to drop it there.`);
      } else if (held.id === id) putBack();
      else {
        show({ ...held, place: now.current.ids.indexOf(id) });
        drop();
      }
    };
    const listeners = {
      keydown: onKeyDown,
      focusout: onFocusOut,
      pointerdown: onPointerDown,
      pointermove: onPointerMove,
      pointerup: onPointerUp,
      pointercancel: onPointerCancel,
      click: onClick,
    };
    const entries = Object.entries(listeners) as [string, EventListener][];
    for (const [type, listener] of entries) element.addEventListener(type, listener);
    return () => {
      for (const [type, listener] of entries) element.removeEventListener(type, listener);
    };
  }, []);

  return (
    <div ref={box} className="relative">
      {children}
      {line !== null && (
        <div
          aria-hidden="true"
          data-drop
          className="pointer-events-none absolute inset-x-0 h-1 -translate-y-1/2 bg-hand"
          style={{ top: line }}
        />
      )}
      <p
        role="status"
        className={hold?.by === 'pointer' && said ? 'text-fine text-soft' : 'unseen'}
      >
        {said}
      </p>
      <p role="alert" className="text-fine font-semibold text-hand">
        {fault}
      </p>
    </div>
  );
}

/** Sends a drop; the fault in words, or '' once it is kept. */
async function sent(
  action: Props['action'],
  values: Readonly<Record<string, string>>,
  order: readonly string[],
): Promise<string> {
  const form = new FormData();
  for (const [name, value] of Object.entries(values)) form.set(name, value);
  form.set('order', order.join(' '));
  try {
    const { problems } = await action(UNTOUCHED, form);
    return problems.map(({ message }) => message).join(' ');
  } catch (error) {
    unstable_rethrow(error);
    return 'The program did not answer: the order is as it was.';
  }
}

function handleOf(element: HTMLElement | null, id: string): HTMLElement | null {
  return element?.querySelector<HTMLElement>(`[data-move="${CSS.escape(id)}"]`) ?? null;
}

function extentsIn(element: HTMLElement, ids: readonly string[]): readonly Extent[] {
  return ids.flatMap((id) => {
    const member = element.querySelector(`[data-member="${CSS.escape(id)}"]`);
    if (!member) return [];
    const { top, bottom } = member.getBoundingClientRect();
    return [{ id, top, bottom }];
  });
}

/** Shows which member is held, on the member and on its handle. */
function mark(element: HTMLElement, id: string | null): void {
  for (const member of element.querySelectorAll<HTMLElement>('[data-member]')) {
    if (member.dataset.member === id) member.dataset.held = '';
    else delete member.dataset.held;
  }
  for (const handle of element.querySelectorAll('[data-move]')) {
    handle.setAttribute('aria-pressed', String(handle.getAttribute('data-move') === id));
  }
}
