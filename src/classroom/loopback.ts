/**
 * Whether a host's name or address means the PC that it is said on (RFC 1122 3.2.1.3, RFC 4291 2.5.3, RFC 6761 6.3): no other PC gets
 * anywhere with it. An IPv6 address may stand in brackets, as in a URL.
 */
export function isLoopback(name: string): boolean {
  const plain = name.toLowerCase().replace(/^\[|\]$/g, '');
  return plain === 'localhost' || plain.endsWith('.localhost') || plain === '::1' || /^127(\.\d{1,3}){3}$/.test(plain);
}
