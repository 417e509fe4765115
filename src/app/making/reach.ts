import { isLoopback } from '../../classroom/loopback.ts';

/** Whether a link to this page opens on this PC alone: the page came from its disk, or from an address that means the PC itself. */
export const isOnlyHere = ({ protocol, hostname }: Pick<Location, 'protocol' | 'hostname'>): boolean =>
  protocol === 'file:' || isLoopback(hostname);
