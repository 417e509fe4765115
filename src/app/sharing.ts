/** Data in a link: JSON, deflated (RFC 1951), in base64url (RFC 4648 §5), so that it may stand behind the hash of any address. */
import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';
import { dataError } from '../rig/errors.ts';

/** Longer links are cut off by some mail programs and browsers; common practice, no source. Characters. */
export const LONGEST_LINK = 32_000;
/** Nothing of ours is larger, bytes: what unpacks to more was made to fill a memory. */
const MOST_UNPACKED = 2_000_000;
/** So many packed bytes are unpacked at a time, so that one that swells is noticed early. */
const CHUNK = 1024;
/** So many bytes are turned into characters at a time: a call takes only so many arguments. */
const CALL = 4096;

/**
 * Any JSON as a text of A–Z, a–z, 0–9, - and _.
 * @throws DataError `share.long` where it would be longer than {@link LONGEST_LINK}
 */
export function encodeShared(json: unknown): string {
  const packed = deflateSync(strToU8(JSON.stringify(json)), { level: 9 });
  let binary = '';
  for (let at = 0; at < packed.length; at += CALL) binary += String.fromCharCode(...packed.subarray(at, at + CALL));
  const text = btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
  if (text.length > LONGEST_LINK) throw dataError('share.long', '(link)', { length: text.length, most: LONGEST_LINK });
  return text;
}

/**
 * What {@link encodeShared} packed. It comes from anywhere: what it says is still to be checked by the schema of whatever it should be.
 * @throws DataError `share.long` or `share.broken`
 */
export function decodeShared(text: string): unknown {
  if (text.length > LONGEST_LINK) throw dataError('share.long', '(link)', { length: text.length, most: LONGEST_LINK });
  if (!/^[A-Za-z0-9_-]+$/.test(text)) throw dataError('share.broken', '(link)');
  try {
    const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
    return JSON.parse(strFromU8(unpack(Uint8Array.from(binary, (each) => each.charCodeAt(0)))));
  } catch {
    throw dataError('share.broken', '(link)');
  }
}

/** @throws where the packed bytes are damaged, end too soon, or swell beyond measure */
function unpack(packed: Uint8Array): Uint8Array {
  const chunks: Uint8Array[] = [];
  let size = 0;
  const inflate = new Inflate((chunk) => {
    size += chunk.length;
    if (size > MOST_UNPACKED) throw new Error('too large');
    chunks.push(chunk);
  });
  for (let at = 0; at < packed.length; at += CHUNK) inflate.push(packed.subarray(at, at + CHUNK), at + CHUNK >= packed.length);
  const whole = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}
