import fc from 'fast-check';
import { deflateSync } from 'fflate';
import { expect, test } from 'vitest';
import { decodeShared, encodeShared, LONGEST_LINK } from '../../src/app/sharing.ts';
import { isDataError } from '../../src/rig/errors.ts';
import { library } from '../scenario/shipped.ts';

function codeOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (isDataError(error)) return error.code;
    throw error;
  }
  return 'fine';
}

const packed = (bytes: Uint8Array) => Buffer.from(deflateSync(bytes)).toString('base64url');

test('any JSON comes back from a text that may stand in an address', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (json) => {
      const text = encodeShared(json);
      expect(text).toMatch(/^[A-Za-z0-9_-]+$/);
      expect(decodeShared(text)).toEqual(JSON.parse(JSON.stringify(json)));
    }),
    { numRuns: 300 },
  );
});

test('every shipped ticket fits into a link with much room to spare', () => {
  for (const ticket of library.tickets) {
    const text = encodeShared(ticket);
    expect(text.length).toBeLessThan(2000);
    expect(decodeShared(text)).toEqual(ticket);
  }
});

test('what is too long for a link is refused, going in and coming out', () => {
  let seed = 1;
  const noise = Array.from({ length: 30_000 }, () => {
    seed = (seed * 48_271) % 2_147_483_647;
    return seed;
  });
  expect(codeOf(() => encodeShared(noise))).toBe('share.long');
  expect(codeOf(() => decodeShared('A'.repeat(LONGEST_LINK + 1)))).toBe('share.long');
});

test('a link that is cut off, altered or foreign is broken, whatever it holds', () => {
  const text = encodeShared(library.tickets[0]);
  for (let length = 0; length < text.length; length += 7)
    expect(codeOf(() => decodeShared(text.slice(0, length)))).toBe('share.broken');
  expect(codeOf(() => decodeShared('../../etc'))).toBe('share.broken');
  expect(codeOf(() => decodeShared('<script>'))).toBe('share.broken');
  fc.assert(
    fc.property(fc.string({ maxLength: 400 }), (hostile) => {
      const code = codeOf(() => decodeShared(hostile));
      expect(['share.broken', 'fine']).toContain(code);
    }),
  );
});

test('few bytes that swell to many are not unpacked', () => {
  const bomb = packed(new Uint8Array(20_000_000).fill(32));
  expect(bomb.length).toBeLessThan(LONGEST_LINK);
  expect(codeOf(() => decodeShared(bomb))).toBe('share.broken');
});

test('bytes that are no JSON are broken', () => {
  expect(codeOf(() => decodeShared(packed(new TextEncoder().encode('{"a":'))))).toBe('share.broken');
});
