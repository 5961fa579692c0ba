import { readKitchen } from '#lib/store/read-kitchen';
import { readSeason } from '#lib/store/read-season';
import { localDate } from '#lib/units/local-date';
import { SeasonView } from './_components/season-view';

interface Props {
  readonly searchParams: Promise<{ readonly after?: string | string[] }>;
}

export default async function SeasonPage({ searchParams }: Props) {
  const { after } = await searchParams;
  const page = await readSeason({ after: typeof after === 'string' ? after : undefined });
  const kitchen = await readKitchen();
  const today = localDate(new Date(), kitchen?.kitchen.zone ?? 'UTC');
  return <SeasonView episodes={page.rows} today={today} next={page.next} />;
}
