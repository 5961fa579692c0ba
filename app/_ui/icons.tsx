/**
 * The icons: one hand, one grease pencil. Strokes are round-ended, a little heavier than the text beside
 * them and never quite straight. Each stands beside words and is hidden from what reads aloud.
 */
const DRAWINGS = {
  scale: [
    'M3.4 20.4c5.8.5 11.5.4 17.3-.1M5.2 20c.3-3.9 2.4-6.7 6.9-6.7s6.5 2.7 6.8 6.6',
    'M4 10.2c5.2.6 10.9.6 16.1-.1M12 10.7v2.4M12.1 16.3l2.3 2.2',
  ],
  slate: [
    'M3.3 10.3l17.5.2-.4 10.1-16.9.1zM3.3 9.6L2.6 6.2l16.7-3.5.7 3.3z',
    'M7.7 8.5l1.2-3.7M13 7.3l1.2-3.6',
  ],
  oven: [
    'M3.6 3.6c5.6-.3 11.2-.3 16.9.1-.2 5.6-.1 11.2 0 16.8-5.7.2-11.3.2-16.9-.1.1-5.6.2-11.2 0-16.8zM3.7 8.4c5.5.2 11.1.2 16.7 0',
    'M7 12.3c3.3-.2 6.7-.2 10 0v4.6c-3.3.2-6.7.2-10 0zM7.3 6h.1M11 6h5.6',
  ],
  hand: [
    'M7.6 13.6V6.3c0-2 2.6-2 2.7 0l.1 4.6V4.3c.1-1.9 2.7-1.9 2.7.1l.1 6.5.1-5.3c.1-1.8 2.6-1.8 2.6.1v6l.1-3c.2-1.7 2.5-1.6 2.5.2-.1 3.3.2 6.7-1.4 9.5-1.3 2.3-3.4 3.1-5.7 3-3.7-.1-5.1-2.4-8.2-8-.9-1.7 1.1-2.9 2.3-1.5z',
  ],
  knife: [
    'M2.9 20.8l6.7-6.7M9.5 14.2C13 10.5 16.5 6.7 20.6 3.2c1.3 3.8.6 7.5-2.4 10.4-1.7 1.6-3.7 2.3-6.2 2.5z',
  ],
  basket: [
    'M2.8 10c6.2-.2 12.3-.2 18.4.1-.7 3.4-1.4 6.8-2.5 10-4.5.3-9 .3-13.5-.1C4.2 16.8 3.4 13.4 2.8 10z',
    'M7.4 9.7L10 3.6M16.7 9.8l-2.6-6.2M9.3 13.4l.6 3.5M14.8 13.4l-.6 3.5',
  ],
  pencil: ['M4 20.2l1.2-4.6L16.3 4.4c1.7-1.5 4.5 1.2 3.1 3L8.5 18.7z', 'M14.3 6.7l3 3'],
  undo: [
    'M8.7 4.3L4 8.7l4.9 4.2M4.3 8.7c4-.2 7.9-.4 11.2.6 5.5 1.8 5.7 8.8.2 10.5-2 .6-4.3.5-6.6.4',
  ],
  copy: [
    'M8.5 8.3c3.9-.2 7.7-.2 11.7 0 .1 3.9.1 7.8 0 11.9-4 .2-7.8.2-11.7 0-.1-4-.1-8 0-11.9z',
    'M15.7 5.4V3.7c-4-.2-7.9-.2-11.9.1-.2 4-.2 7.9 0 11.9h1.8',
  ],
  print: [
    'M7 8.6V3.5c3.4-.2 6.7-.2 10 .1v5M6.6 17.2H3.5V8.8c5.7-.3 11.3-.3 17 0v8.4h-3.1',
    'M7 14c3.4-.2 6.7-.2 10 0v6.6c-3.3.1-6.6.1-10 0zM17 11.6h.1',
  ],
  moon: ['M19.9 14.5C13.5 16.7 7.9 11.4 9.7 4 5.3 5.6 3 9.7 4.2 14c1.7 6.4 10.5 8.9 15.7.5z'],
  sun: [
    'M12.1 7.7c5.7 0 5.6 8.7-.1 8.6-5.6 0-5.5-8.7.1-8.6z',
    'M12 2.6l.1 1.9M12 19.5l-.1 1.9M2.6 12h1.9M19.5 12.1l1.9-.1M5.3 5.4l1.4 1.3M17.3 17.4l1.4 1.3M5.3 18.7l1.4-1.4M17.4 6.7l1.3-1.4',
  ],
  link: [
    'M10.2 13.9c-2-2.1-1.6-4.1-.1-5.6l3.3-3.4c3.7-3.5 9 1.6 5.4 5.5l-2 2.1',
    'M13.9 10.1c2 2.1 1.6 4.1.1 5.6l-3.3 3.4c-3.7 3.5-9-1.6-5.4-5.5l2-2.1',
  ],
  warning: [
    'M12 3.3c3.2 5.5 6.2 10.9 9 16.7-6 .4-12 .4-18 0C5.8 14.2 8.8 8.8 12 3.3z',
    'M12 9.4l.1 5M12 17.2h.1',
  ],
} as const;

export type IconName = keyof typeof DRAWINGS;
export const ICON_NAMES = Object.keys(DRAWINGS) as readonly IconName[];

interface Props {
  readonly name: IconName;
  /** `large` beside a heading or a step; the usual size goes with a line of text. */
  readonly size?: 'usual' | 'large';
}

/** An icon beside words that say the same. */
export function Icon({ name, size = 'usual' }: Props) {
  return (
    <svg
      viewBox="0 0 24 24"
      className={`inline-block shrink-0 ${size === 'large' ? 'size-8' : 'size-[1.2em] align-[-0.22em]'}`}
      fill="none"
      stroke="currentColor"
      strokeWidth="2.3"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      {DRAWINGS[name].map((path) => (
        <path key={path} d={path} />
      ))}
    </svg>
  );
}
