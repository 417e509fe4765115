/** A PIN keeps honest people apart on one PC. It encrypts nothing: whoever opens the browser's own tools reads all. */

export interface Pin {
  /** Both in base 64. */
  readonly salt: string;
  readonly hash: string;
  readonly rounds: number;
}

/** OWASP's figure for PBKDF2 with SHA-256, from memory. */
const ROUNDS = 600_000;

const toText = (bytes: Uint8Array): string => btoa(String.fromCharCode(...bytes));
const toBytes = (text: string): Uint8Array<ArrayBuffer> => Uint8Array.from(atob(text), (each) => each.charCodeAt(0));

async function hashed(pin: string, salt: Uint8Array<ArrayBuffer>, rounds: number): Promise<string> {
  const key = await crypto.subtle.importKey('raw', new TextEncoder().encode(pin), 'PBKDF2', false, ['deriveBits']);
  const bits = await crypto.subtle.deriveBits({ name: 'PBKDF2', hash: 'SHA-256', salt, iterations: rounds }, key, 256);
  return toText(new Uint8Array(bits));
}

/** Whether this browser can hash here: it does so only on https, on localhost and for files. */
export const canHash = (): boolean => globalThis.crypto?.subtle !== undefined;

/** 4 to 8 digits. */
export const isPin = (text: string): boolean => /^\d{4,8}$/.test(text);

export async function newPin(pin: string): Promise<Pin> {
  const salt = crypto.getRandomValues(new Uint8Array(16));
  return { salt: toText(salt), hash: await hashed(pin, salt, ROUNDS), rounds: ROUNDS };
}

export async function fits(pin: Pin, tried: string): Promise<boolean> {
  return (await hashed(tried, toBytes(pin.salt), pin.rounds)) === pin.hash;
}
