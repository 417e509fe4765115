import type { Action } from './actions.ts';
import { body } from './doing/body.ts';
import { measuring } from './doing/measuring.ts';
import { places } from './doing/places.ts';
import { things } from './doing/things.ts';
import { ticket } from './doing/ticket.ts';
import { wires } from './doing/wires.ts';
import type { ActionKind, Registry } from './kind.ts';

/** Every action that there is: what it costs, why it may be refused, and what it does. */
export const REGISTRY: Registry = { ...places, ...body, ...measuring, ...wires, ...things, ...ticket };

/** The registered kind of an action, typed so that it can be asked about that very action. */
export function kindOf(action: Action): ActionKind<Action> {
  return REGISTRY[action.name] as unknown as ActionKind<Action>;
}
