import * as x509 from '@peculiar/x509';
import { ALGORITHM, keyPem, serialNumber, type Authority } from './authority';

const DAY_MS = 86_400_000;
/**
 * Phones refuse certificates that are good for too long: at most 397 days for certificates of public
 * authorities, 200 from March 2026 on (CA/Browser Forum, Baseline Requirements 6.3.2; from memory). One is made
 * at each start, so this is well below either.
 */
export const LEAF_DAYS = 190;

/** A certificate as a server is given it: with its authority's behind it, and its key. */
export interface ServerCertificate {
  readonly cert: string;
  readonly key: string;
}

/** A certificate for these names and addresses, signed by the authority. Its key is new and kept nowhere. */
export async function makeLeaf(
  authority: Authority,
  names: readonly string[],
  now: Date,
): Promise<ServerCertificate> {
  const keys = await crypto.subtle.generateKey(ALGORITHM, true, ['sign', 'verify']);
  const alternatives = names.map((value): { type: 'ip' | 'dns'; value: string } => ({
    type: /^[\d.]+$|:/.test(value) ? 'ip' : 'dns',
    value,
  }));
  const leaf = await x509.X509CertificateGenerator.create({
    serialNumber: serialNumber(),
    subject: new x509.Name([{ CN: [names[0] ?? 'Scale & Slate'] }]),
    issuer: authority.certificate.subjectName,
    notBefore: new Date(now.getTime() - DAY_MS),
    notAfter: new Date(now.getTime() + (LEAF_DAYS - 1) * DAY_MS),
    signingAlgorithm: ALGORITHM,
    publicKey: keys.publicKey,
    signingKey: authority.key,
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension(alternatives),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
      await x509.AuthorityKeyIdentifierExtension.create(authority.certificate.publicKey),
    ],
  });
  const chain = [leaf, authority.certificate].map((each) => each.toString('pem')).join('\n');
  return { cert: chain, key: await keyPem(keys.privateKey) };
}
