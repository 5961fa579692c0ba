import { FREE_FROM_CAUTION } from '#lib/claims/free-from/free-from-caution';

interface Props {
  readonly hasClaims: boolean;
  readonly hasFreeFrom: boolean;
}

/** What a verdict does not say. */
export function Cautions({ hasClaims, hasFreeFrom }: Props) {
  return (
    <section aria-labelledby="cautions" className="mt-10 max-w-[70ch] text-fine text-soft">
      <h2 id="cautions" className="text-base font-semibold">
        What this is not
      </h2>
      <p className="mt-1">
        A verdict says whether what was said agrees with your own breakdown, never that a number is
        true. Figures are for information, not dietary or medical advice. Temperatures and times
        follow published guidance; your local code and licensed practice decide.
      </p>
      {hasFreeFrom && <p className="mt-1">{FREE_FROM_CAUTION}</p>}
      {hasClaims && (
        <p className="mt-1">
          Words such as “high protein” or “light” are held against the published thresholds of the
          region. Whether this episode is commercial communication, so that they bind you, is for
          you and your counsel to say.
        </p>
      )}
    </section>
  );
}
