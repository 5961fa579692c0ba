import { ButtonLink } from './_ui/button';
import { SlateHead } from './_ui/slate-head';

export default function NotFound() {
  return (
    <>
      <SlateHead kind="Nothing here" title="There is no such page" />
      <p className="mb-5 max-w-[60ch]">
        It may have been taken out, or the address was typed with a slip.
      </p>
      <ButtonLink href="/">To the season</ButtonLink>
    </>
  );
}
