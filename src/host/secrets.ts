/** PINs, the instructor's password and tokens: made, hashed and compared. None is kept as it is. */
import { createHash, randomBytes, randomInt, scrypt, timingSafeEqual } from 'node:crypto';

/** Cost of scrypt (RFC 7914): 16 MB and some tens of milliseconds a guess. */
const COST = { N: 2 ** 14, r: 8, p: 1 };
const KEY_BYTES = 32;
/** Without letters and digits that look alike. */
const LETTERS = 'ABCDEFGHJKMNPQRSTUVWXYZ23456789';

const derive = (secret: string, salt: Buffer): Promise<Buffer> =>
  new Promise((resolve, reject) => {
    scrypt(secret.normalize('NFKC'), salt, KEY_BYTES, COST, (error, key) => (error ? reject(error) : resolve(key)));
  });

/** `salt:key`, both hexadecimal. */
export async function hashSecret(secret: string): Promise<string> {
  const salt = randomBytes(16);
  return `${salt.toString('hex')}:${(await derive(secret, salt)).toString('hex')}`;
}

/** What nobody's secret has been hashed to, so that a name that is not there costs a guesser as much time as one that is. */
const NOBODY = `${'0'.repeat(32)}:${'0'.repeat(KEY_BYTES * 2)}`;

/** Whether a secret is the one that was hashed; false, and as slow, where there is none. */
export async function verifySecret(secret: string, hash: string | undefined): Promise<boolean> {
  const [salt = '', key = ''] = (hash ?? NOBODY).split(':');
  const found = await derive(secret, Buffer.from(salt, 'hex'));
  const kept = Buffer.from(key, 'hex');
  return found.length === kept.length && timingSafeEqual(found, kept) && hash !== undefined;
}

/** Whether two texts are equal, in a time that does not tell where they differ. */
export function sameText(a: string, b: string): boolean {
  const [one, other] = [a, b].map((text) => createHash('sha256').update(text).digest());
  return one !== undefined && other !== undefined && timingSafeEqual(one, other);
}

export const makeToken = (): string => randomBytes(32).toString('base64url');

/** A token is random enough that a plain hash keeps it. */
export const hashToken = (token: string): string => createHash('sha256').update(token).digest('hex');

/** Six digits. */
export const makePin = (): string => String(randomInt(1_000_000)).padStart(6, '0');

/** Letters and digits that can be read out and typed. */
export const makeCode = (length: number): string =>
  Array.from({ length }, () => LETTERS.charAt(randomInt(LETTERS.length))).join('');
