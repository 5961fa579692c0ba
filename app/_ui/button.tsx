import Link from 'next/link';
import type { ButtonHTMLAttributes, ReactNode } from 'react';

/** `go`: the one thing this form is for. `plain`: the others. `hand`: takes something away. `bare`: as a link. */
export type ButtonTone = 'go' | 'plain' | 'hand' | 'bare';

const FRAME =
  'inline-flex items-center justify-center gap-2 border-[1.5px] py-1 text-center font-slate leading-none font-semibold tracking-[0.02em] disabled:border-dashed disabled:border-edge disabled:bg-sunk disabled:text-soft aria-disabled:cursor-default aria-busy:cursor-progress aria-disabled:border-dashed print:hidden';

const TONES: Readonly<Record<Exclude<ButtonTone, 'bare'>, string>> = {
  go: 'border-ink bg-ink text-paper hover:bg-paper hover:text-ink',
  plain: 'border-ink bg-raised text-ink hover:bg-sunk',
  hand: 'border-hand bg-raised text-hand hover:bg-hand-wash',
};

/** `day`: 56 px and more, for wet hands at arm's length. */
const SIZES = {
  usual: 'min-h-11 px-5 text-lead',
  small: 'min-h-8 px-2.5 text-base',
  day: 'min-h-14 w-full px-5 text-step',
} as const;

/** A button in the clothes of a link, for the small acts beside a text. */
const BARE = 'link inline-flex min-h-6 items-center text-fine print:hidden';

export type ButtonSize = keyof typeof SIZES;

/** The classes of a button, for what must look like one and is another element. */
export function buttonClass(tone: ButtonTone = 'plain', size: ButtonSize = 'usual'): string {
  if (tone === 'bare') return BARE;
  return `${FRAME} ${TONES[tone]} ${SIZES[size]}`;
}

interface Props extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'className'> {
  readonly tone?: ButtonTone;
  readonly size?: ButtonSize;
}

/** A button. It sends its form unless `type` says otherwise. */
export function Button({ tone = 'plain', size = 'usual', type = 'submit', ...rest }: Props) {
  return <button type={type} className={buttonClass(tone, size)} {...rest} />;
}

interface LinkProps {
  readonly href: string;
  readonly tone?: ButtonTone;
  readonly size?: ButtonSize;
  readonly download?: boolean;
  /** False where the page stays where it is. */
  readonly scroll?: boolean;
  readonly children: ReactNode;
}

/** A link that looks like a button. A download is fetched by the browser, not by the router. */
export function ButtonLink({
  href,
  tone = 'plain',
  size = 'usual',
  download,
  scroll = true,
  children,
}: LinkProps) {
  const className = buttonClass(tone, size);
  if (download) {
    return (
      <a href={href} className={className} download>
        {children}
      </a>
    );
  }
  return (
    <Link href={href} className={className} scroll={scroll}>
      {children}
    </Link>
  );
}
