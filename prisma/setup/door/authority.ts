import 'reflect-metadata';
import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { AsnConvert } from '@peculiar/asn1-schema';
import {
  GeneralName,
  GeneralSubtree,
  GeneralSubtrees,
  id_ce_nameConstraints,
  NameConstraints,
} from '@peculiar/asn1-x509';
import * as x509 from '@peculiar/x509';
import { PRIVATE_RANGES } from '#lib/door/private-address';

export const ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const;

const DAY_MS = 86_400_000;
/** Ten years, the longest that a phone must be asked to trust us without being asked again. Ours, no source. */
const AUTHORITY_DAYS = 3650;
/** With less than this left a new authority is made, and trusted anew. */
const RENEW_DAYS = 400;

/** A machine's own addresses for itself (RFC 1122 section 3.2.1.3, from memory): for a door that is tried out there. */
const LOOPBACK = { address: '127.0.0.0', bits: 8 };

/** The self-made certificate authority: its certificate, and the key that signs. */
export interface Authority {
  readonly certificate: x509.X509Certificate;
  readonly key: CryptoKey;
}

/**
 * What the authority may vouch for: addresses that no site of the internet has, and names in `.local`. A
 * phone that trusts it is fooled by nobody who steals its key into taking a site of the internet for another.
 */
export function nameConstraints(): x509.Extension {
  const ranges = [...PRIVATE_RANGES, LOOPBACK].map(
    ({ address, bits }) => new GeneralName({ iPAddress: `${address}/${bits}` }),
  );
  const bases = [...ranges, new GeneralName({ dNSName: 'local' })];
  const permittedSubtrees = new GeneralSubtrees(bases.map((base) => new GeneralSubtree({ base })));
  const value = AsnConvert.serialize(new NameConstraints({ permittedSubtrees }));
  return new x509.Extension(id_ce_nameConstraints, true, value);
}

/** A serial number of 127 random bits, positive and not zero. */
export function serialNumber(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[0] = ((bytes[0] ?? 0) & 0x7f) | 0x40;
  return Buffer.from(bytes).toString('hex');
}

/** A new authority, good from a day before `now` on, so that a clock that is a little behind accepts it. */
export async function makeAuthority(machine: string, now: Date): Promise<Authority> {
  const keys = await crypto.subtle.generateKey(ALGORITHM, true, ['sign', 'verify']);
  const certificate = await x509.X509CertificateGenerator.createSelfSigned({
    serialNumber: serialNumber(),
    name: new x509.Name([{ CN: [`Scale & Slate on ${machine}`] }, { O: ['Scale & Slate'] }]),
    notBefore: new Date(now.getTime() - DAY_MS),
    notAfter: new Date(now.getTime() + (AUTHORITY_DAYS - 1) * DAY_MS),
    signingAlgorithm: ALGORITHM,
    keys,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign, true),
      nameConstraints(),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  return { certificate, key: keys.privateKey };
}

/**
 * The authority kept in a folder, or a new one where there is none, it cannot be read, or its time is nearly
 * over. Folder and files are for their owner alone.
 */
export async function keptAuthority(
  folder: string,
  machine: string,
  now: Date,
): Promise<{ readonly authority: Authority; readonly made: boolean }> {
  const files = { crt: join(folder, 'authority.crt'), key: join(folder, 'authority.key') };
  const kept = await readAuthority(files.crt, files.key);
  const least = new Date(now.getTime() + RENEW_DAYS * DAY_MS);
  if (kept !== null && kept.certificate.notAfter > least && kept.certificate.notBefore <= now) {
    return { authority: kept, made: false };
  }
  const authority = await makeAuthority(machine, now);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  chmodSync(folder, 0o700);
  writePrivate(files.key, await keyPem(authority.key));
  writePrivate(files.crt, authority.certificate.toString('pem'));
  return { authority, made: true };
}

async function readAuthority(crt: string, key: string): Promise<Authority | null> {
  if (!existsSync(crt) || !existsSync(key)) return null;
  try {
    const certificate = new x509.X509Certificate(readFileSync(crt, 'utf8'));
    const der = x509.PemConverter.decodeFirst(readFileSync(key, 'utf8'));
    const signing = await crypto.subtle.importKey('pkcs8', der, ALGORITHM, false, ['sign']);
    const authority = { certificate, key: signing };
    return (await belongTogether(authority)) ? authority : null;
  } catch {
    return null;
  }
}

/** Whether the key is that of the certificate: a run killed between the two files leaves a pair that is none. */
async function belongTogether({ certificate, key }: Authority): Promise<boolean> {
  const words = new TextEncoder().encode('one pair');
  const signature = await crypto.subtle.sign(ALGORITHM, key, words);
  const open = await certificate.publicKey.export(ALGORITHM, ['verify']);
  return crypto.subtle.verify(ALGORITHM, open, signature, words);
}

/** A private key as PEM. */
export async function keyPem(key: CryptoKey): Promise<string> {
  return x509.PemConverter.encode(await crypto.subtle.exportKey('pkcs8', key), 'PRIVATE KEY');
}

/** Writes a file that its owner alone may read, in place at once or not at all. */
export function writePrivate(file: string, text: string): void {
  const fresh = `${file}.new`;
  writeFileSync(fresh, `${text.trimEnd()}\n`, { mode: 0o600 });
  chmodSync(fresh, 0o600);
  renameSync(fresh, file);
}

/** The SHA-256 of a certificate as phones show it: `'3F:A9:…'`. */
export async function fingerprint(certificate: x509.X509Certificate): Promise<string> {
  const bytes = Buffer.from(await certificate.getThumbprint('SHA-256'));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0').toUpperCase()).join(':');
}
