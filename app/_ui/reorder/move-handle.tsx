interface Props {
  readonly id: string;
  /** Names what is moved. */
  readonly what: string;
}

/** Takes hold of a member of a `Reorder`: by dragging, or by Enter and the arrow keys. */
export function MoveHandle({ id, what }: Props) {
  return (
    <button
      type="button"
      data-move={id}
      aria-pressed="false"
      className="inline-flex noscript:hidden ml-1.5 -my-1 min-h-8 min-w-8 cursor-grab align-middle touch-none items-center justify-center text-soft hover:text-ink aria-pressed:bg-ink aria-pressed:text-paper print:hidden"
    >
      <svg aria-hidden="true" viewBox="0 0 16 16" className="size-4" fill="currentColor">
        <path d="M8 1l3 4H5zM8 15l-3-4h6zM2 7h12v2H2z" />
      </svg>
      <span className="unseen">Move {what}</span>
    </button>
  );
}
