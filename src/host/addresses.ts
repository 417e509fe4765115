/** Where this PC is found in the room. */
import type { AddressInfo } from 'node:net';
import { type NetworkInterfaceInfo, networkInterfaces } from 'node:os';
import { isLoopback } from '../classroom/loopback.ts';

type Networks = Readonly<Record<string, readonly NetworkInterfaceInfo[] | undefined>>;

/**
 * The addresses that other PCs open, as `http://192.168.1.20:8780`: IPv4, one of each network that this PC is on. None where the host
 * listens to this PC alone, or does not listen.
 * @param bound what the host listens at, as Node's `server.address()` tells
 */
export function roomAddresses(bound: AddressInfo | string | null, networks: Networks = networkInterfaces()): string[] {
  if (bound === null || typeof bound === 'string' || isLoopback(bound.address)) return [];
  const all = Object.values(networks).flatMap((each) => each ?? []);
  const outside = all.filter(({ family, internal }) => family === 'IPv4' && !internal).map(({ address }) => address);
  const heard = bound.address === '0.0.0.0' || bound.address === '::' ? outside : outside.filter((each) => each === bound.address);
  return heard.map((address) => `http://${address}:${bound.port}`);
}
