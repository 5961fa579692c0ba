import Link from 'next/link';
import { Mark } from './mark';
import { NavLink } from './nav-link';
import { NotAtTheDoor } from './not-at-the-door';

/**
 * The head of every page: the name, and the three places outside an episode. From 24 rem on it is one row
 * whatever the font, so that the page does not move when the lettering arrives; below it is two.
 */
export function PageNav() {
  return (
    <div className="flex flex-wrap items-center gap-x-4 py-1.5 min-[24rem]:flex-nowrap md:gap-x-8 md:py-3 print:hidden">
      <Link
        href="/"
        className="inline-flex min-h-11 items-center gap-2 font-slate text-lead whitespace-nowrap md:gap-2.5 md:text-head font-semibold"
      >
        <Mark />
        Scale &amp; Slate
      </Link>
      <NotAtTheDoor>
        <nav
          aria-label="Main"
          className="flex flex-wrap gap-x-4 min-[24rem]:flex-nowrap md:gap-x-6"
        >
          <NavLink href="/" alsoBelow="/episodes">
            Season
          </NavLink>
          <NavLink href="/pantry" alsoBelow="/pantry/">
            Pantry
          </NavLink>
          <NavLink href="/kitchen">Kitchen</NavLink>
        </nav>
      </NotAtTheDoor>
    </div>
  );
}

/** The pages of one episode: one row, on a phone two, whatever the font. */
export function EpisodeNav({ id }: { readonly id: string }) {
  return (
    <nav
      aria-label="Episode"
      className="mb-3 flex flex-wrap gap-x-4 border-t md:mb-5 md:gap-x-6 border-line pt-1 print:hidden"
    >
      <NavLink href={`/episodes/${id}`}>Running order</NavLink>
      <NavLink href={`/episodes/${id}/numbers`}>Numbers</NavLink>
      <NavLink href={`/episodes/${id}/day`}>Day</NavLink>
      <NavLink href={`/episodes/${id}/shopping`}>Shopping</NavLink>
      <NavLink href={`/episodes/${id}/edit`} alsoBelow={`/episodes/${id}/edit/`}>
        The edit
      </NavLink>
      <NavLink href={`/episodes/${id}/publish`}>Publish</NavLink>
      <NavLink href={`/episodes/${id}/cards`}>Cards</NavLink>
    </nav>
  );
}
