import type { Scene } from '../../drills/scene.ts';
import { layHouse } from '../../rig/house.ts';
import type { RigData } from '../../rig/schema.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { rigs, storyOf } from '../library.ts';
import { retell } from '../retell.ts';
import type { Loaded } from '../use-attempt.ts';

/** Ids of the scenes that were opened in this tab count up, so that each has an engine and words of its own. */
let opened = 0;

/** A drill's circuit as a bench has it: a job without a score, where somebody has taken the scene's steps. Undefined where its rig is gone. */
export function loadedFrom(scene: Scene): { readonly loaded: Loaded; readonly rig: RigData } | undefined {
  const plain = rigs.get(scene.rig);
  if (!plain) return undefined;
  const { rig: name, house, weather, tools, history, faults, actions } = scene;
  const rig = layHouse(plain, house);
  opened += 1;
  const job: Ticket = {
    format: 'bellwire-ticket',
    version: 1,
    id: `drill${opened}`,
    rig: name,
    mode: 'practice',
    order: 0,
    house,
    weather,
    faults: [...faults],
    ...(tools ? { tools: [...tools] } : {}),
    complaint: { history: [...history], observed: [], works: [] },
  };
  const ticket: Ticket = { ...job, told: storyOf(job) };
  return { rig, loaded: { ticket, ...retell(ticket, rig, actions), origin: 'begun' } };
}
