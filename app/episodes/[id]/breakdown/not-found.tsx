import { ButtonLink } from '../../../_ui/button';
import { SlateHead } from '../../../_ui/slate-head';

/** For an episode, a dish, a portion or a nutrient that is not there. */
export default function NoSuchNumber() {
  return (
    <>
      <SlateHead kind="Nothing here" title="There is no such number" />
      <p className="mb-5 max-w-[60ch]">
        The episode has no such dish, portion or nutrient. It may have been taken out since, 100 g
        may wait for the weight of the finished dish, or the address was typed with a slip.
      </p>
      <ButtonLink href="/">To the season</ButtonLink>
    </>
  );
}
