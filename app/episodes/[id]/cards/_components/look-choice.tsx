import Link from 'next/link';
import { FOOTAGE } from '#lib/publish/cards/footage';
import { CUT_SIZES, type CutSize } from '#lib/publish/cards/frame';
import { CARD_GROUNDS } from '#lib/publish/cards/inks';
import { withLook, type AskedCards } from '../look';

interface Props {
  readonly here: string;
  readonly look: AskedCards;
}

const SIZE_WORDS: Readonly<Record<CutSize, string>> = {
  '1920x1080': '1920 × 1080',
  '1080x1920': '1080 × 1920, upright',
  '3840x2160': '3840 × 2160',
};
const GROUND_WORDS = { plate: 'a plate', outline: 'the picture itself, letters with an edge' };
const FOOTAGE_WORDS = { dark: 'dark footage', light: 'light footage' };

/** How large the cards are, on what their letters stand, and what they are looked at over. */
export function LookChoice({ here, look }: Props) {
  return (
    <div className="mb-8 grid gap-3 print:hidden">
      <Choice
        name="Size"
        options={CUT_SIZES.map((size) => ({ words: SIZE_WORDS[size], ...linkTo({ size }) }))}
      />
      <Choice
        name="Letters on"
        options={CARD_GROUNDS.map((ground) => ({
          words: GROUND_WORDS[ground],
          ...linkTo({ ground }),
        }))}
      />
      <Choice
        name="Looked at over"
        options={FOOTAGE.map((over) => ({ words: FOOTAGE_WORDS[over], ...linkTo({ over }) }))}
      />
    </div>
  );

  function linkTo(part: Partial<AskedCards>) {
    const other = { ...look, ...part };
    const href = withLook(here, other);
    return { href, chosen: href === withLook(here, look) };
  }
}

interface ChoiceProps {
  readonly name: string;
  readonly options: readonly {
    readonly words: string;
    readonly href: string;
    readonly chosen: boolean;
  }[];
}

function Choice({ name, options }: ChoiceProps) {
  return (
    <nav aria-label={name} className="flex flex-wrap items-baseline gap-x-5 gap-y-1">
      <span className="font-slate font-semibold">{name}</span>
      {options.map(({ words, href, chosen }) => (
        <Link
          key={href}
          href={href}
          scroll={false}
          aria-current={chosen ? 'true' : undefined}
          className="link inline-flex min-h-8 items-center aria-[current=true]:font-semibold aria-[current=true]:no-underline aria-[current=true]:border-b-[3px] aria-[current=true]:border-ink"
        >
          {words}
        </Link>
      ))}
    </nav>
  );
}
