import { SlateHead } from '../../../../_ui/slate-head';
import { ButtonLink } from '../../../../_ui/button';
import { PrintButton } from '../../../../_ui/print-button';
import { LastChange } from '../../_components/last-change';
import { Cautions } from './cautions';
import { Contradictions } from './contradictions';
import { Desk } from './desk';
import { Made } from './made';
import { NamedPart } from './named-part';
import { ResultTable } from './result-table';
import { Summary } from './summary';
import { TextsPart } from './texts-part';
import type { EditPage } from './view';

interface Props {
  readonly page: EditPage;
  /** Right after the episode was made of its texts: how many lines became no part of it. */
  readonly drafted?: { readonly left: number } | null;
}

/** The edit: its texts, what they say beside what was computed, and what to do where the two differ. */
export function EditView({ page, drafted = null }: Props) {
  const { counts, texts, rows } = page;
  return (
    <>
      <SlateHead
        kind="The edit"
        title={page.title}
        cells={[
          { name: 'Statements', value: counts.all },
          { name: 'Off', value: counts.off },
          { name: 'Can’t say', value: counts.unknown },
        ]}
      />
      <Made page={page} drafted={drafted} />
      <Summary page={page} />
      {rows.length > 0 && <Desk key={page.at ?? ''} page={page} />}
      <Contradictions page={page} />
      <NamedPart page={page} />
      <TextsPart page={page} />
      {rows.length > 0 && (
        <div className="mt-10 flex flex-wrap gap-3 print:hidden">
          <ButtonLink href={`/episodes/${page.episodeId}/edit/timeline`}>
            Where segments stand in the cut
          </ButtonLink>
          <PrintButton>Print the result</PrintButton>
          <ButtonLink href={`/episodes/${page.episodeId}/edit/result.png`} download>
            Save it as a picture
          </ButtonLink>
        </div>
      )}
      <ResultTable page={page} />
      <LastChange episodeId={page.episodeId} last={page.last} formOpen={false} />
      {(rows.length > 0 || texts.length > 0) && (
        <Cautions hasClaims={page.hasClaims} hasFreeFrom={page.hasFreeFrom} />
      )}
    </>
  );
}
