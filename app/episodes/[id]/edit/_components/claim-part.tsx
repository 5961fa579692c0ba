'use client';

import { CLAIM_WORDS_CAUTION } from '#lib/claims/claim-words/claim-words-caution';
import type { SaidClaim } from '#lib/overview/said-rows';
import { Disclosure } from '../../../../_ui/disclosure';
import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';
import { ClaimForm } from './claim-form';
import { STANDING_WORDS, type EditPage, type Row } from './view';

/** A claim word's working, what the rule leaves to the person, and whom it binds. */
export function ClaimPart({ page, row }: { readonly page: EditPage; readonly row: Row }) {
  const { claim, segmentId, dish } = row;
  if (claim === null) return null;
  return (
    <div className="grid gap-3">
      <Working claim={claim} />
      {claim.asks && segmentId !== null && dish !== null && (
        <Disclosure
          words={`What ${dish} is judged by`}
          open={claim.said === null || row.standing === 'unknown'}
        >
          <ClaimForm page={page} row={row} claim={claim} segmentId={segmentId} />
        </Disclosure>
      )}
      <p className="max-w-[65ch] text-fine text-soft">{CLAIM_WORDS_CAUTION}</p>
    </div>
  );
}

function Working({ claim }: { readonly claim: SaidClaim }) {
  const { section, rows } = claim;
  if (rows.length === 0) return null;
  return (
    <Table
      caption={`What ${section ?? 'the rule'} asks for`}
      showCaption
      tight
      head={
        <>
          <Th>Threshold</Th>
          <Th>In</Th>
          <Th>Your breakdown</Th>
          <Th>Verdict</Th>
        </>
      }
    >
      {rows.map(({ threshold, per, has, verdict }, at) => (
        <Tr key={at} open={verdict === 'unknown'}>
          <RowHead>{threshold}</RowHead>
          <Td>{per}</Td>
          <Td>{has}</Td>
          <Td>{STANDING_WORDS[verdict]}</Td>
        </Tr>
      ))}
    </Table>
  );
}
