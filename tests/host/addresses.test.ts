/** What the host says of where it is found, and what the instructor's page makes of it. */
import type { NetworkInterfaceInfo } from 'node:os';
import { describe, expect, it } from 'vitest';
import { openAt } from '../../src/app/lab/open-at.ts';
import { isLoopback } from '../../src/classroom/loopback.ts';
import { roomAddresses } from '../../src/host/addresses.ts';

const network = (family: 'IPv4' | 'IPv6', address: string, internal = false): NetworkInterfaceInfo =>
  ({
    family,
    address,
    internal,
    netmask: '',
    mac: '',
    cidr: null,
    ...(family === 'IPv6' ? { scopeid: 0 } : {}),
  }) as NetworkInterfaceInfo;
const networks = {
  lo: [network('IPv4', '127.0.0.1', true), network('IPv6', '::1', true)],
  cable: [network('IPv4', '192.168.1.20'), network('IPv6', 'fe80::1')],
  air: [network('IPv4', '10.0.0.7')],
};
const at = (address: string) => ({ address, port: 8098, family: 'IPv4' });

describe('where the host is found', () => {
  it('is every network that it listens at, and never the PC itself', () => {
    const both = ['http://192.168.1.20:8098', 'http://10.0.0.7:8098'];
    expect(roomAddresses(at('0.0.0.0'), networks)).toEqual(both);
    expect(roomAddresses(at('::'), networks)).toEqual(both);
    expect(roomAddresses(at('10.0.0.7'), networks)).toEqual(['http://10.0.0.7:8098']);
    expect(roomAddresses(at('127.0.0.1'), networks)).toEqual([]);
    expect(roomAddresses(null, networks)).toEqual([]);
  });
});

describe('what trainees are told to open', () => {
  const addresses = ['http://192.168.1.20:8098', 'http://10.0.0.7:8098'];
  const told = (url: string, known = addresses) => openAt(new URL(url) as unknown as Location, known);

  it('is what the instructor opened, where that was an address on the network', () => {
    expect(told('http://10.0.0.7:8098/#/class')).toEqual(['http://10.0.0.7:8098']);
    expect(told('http://lab.school.example/')).toEqual(['http://lab.school.example']);
  });

  it.each(['http://localhost:8098/', 'http://127.0.0.1:8098/', 'http://127.0.1.1:8098/', 'http://[::1]:8098/'])(
    'is the host’s addresses on the network where it was %s',
    (url) => {
      expect(told(url)).toEqual(addresses);
      expect(told(url, [])).toEqual([]);
    },
  );

  it('takes no name for this PC that only looks like it', () => {
    for (const name of ['localhost.example', '127.example', 'notlocalhost', '10.127.0.1', ''])
      expect(isLoopback(name), name).toBe(false);
  });
});
