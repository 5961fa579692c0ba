import type { Standing } from '#lib/overview/said-rows';
import { Balance, BalanceMark } from '../../../../_ui/balance';
import type { Row } from './view';

/** How a statement stands: its balance and its words. */
export function StandingMark({ row }: { readonly row: Row }) {
  const { standing, verdict, heavier } = row;
  if (standing === 'aside') {
    return (
      <span className="inline-flex items-center gap-2 text-soft">
        <AsideMark />
        {verdict}
      </span>
    );
  }
  return <Balance verdict={standing} words={verdict} heavier={heavier} />;
}

/** The mark alone, as small as on a strip. */
export function SmallMark({
  standing,
  heavier = 'said',
}: {
  readonly standing: Standing;
  readonly heavier?: Row['heavier'];
}) {
  if (standing === 'aside') return <AsideMark />;
  return <BalanceMark verdict={standing} heavier={heavier} small />;
}

/** Put aside: no beam at all. */
export function AsideMark() {
  return (
    <svg viewBox="0 0 48 30" className="h-4 w-6 shrink-0" stroke="currentColor" aria-hidden="true">
      <path d="M14 15h20" strokeWidth="4" />
    </svg>
  );
}
