import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** Hexadecimal SHA-256 of a text (FIPS 180-4). */
export function hashOf(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

/** Equal for data that are equal, in whatever order their fields stand: the first 32 hexadecimal digits of the SHA-256 of their canonical JSON. */
export function digestOf(value: unknown): string {
  return hashOf(canonical(value)).slice(0, 32);
}

/** JSON with every object's fields in order of name; fields without a value are left out, as JSON leaves them out. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((each) => canonical(each === undefined ? null : each)).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const fields = Object.entries(value)
    .filter(([, each]) => each !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, each]) => `${JSON.stringify(key)}:${canonical(each)}`);
  return `{${fields.join(',')}}`;
}
