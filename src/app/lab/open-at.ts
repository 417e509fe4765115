import { isLoopback } from '../../classroom/loopback.ts';

/**
 * What trainees open. Where the instructor's page came over the network, its own address; where it was opened on the host's PC at an
 * address that means that PC alone, the host's addresses on the network: none where it has none.
 */
export function openAt(
  { hostname, origin }: Pick<Location, 'hostname' | 'origin'>,
  addresses: readonly string[],
): readonly string[] {
  return isLoopback(hostname) ? addresses : [origin];
}
