import { z } from 'zod';

/** How things of a rig are named. */
export const rigId = z.string().regex(/^[a-z][A-Za-z0-9]{0,39}$/, { error: 'rig.id' });
