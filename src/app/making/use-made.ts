import { useEffect, useRef, useState } from 'preact/hooks';
import { layHouse } from '../../rig/house.ts';
import type { RigData } from '../../rig/schema.ts';
import { loadTicket, type Ticket } from '../../scenario/ticket.ts';
import { engineAlone, leaveMaking } from '../engine/engine.ts';
import type { Examined, Survey } from '../engine/making.ts';

/** A hand that goes on typing within this time is waited for, milliseconds. */
const PAUSE = 300;

/** How far a draft has been looked at. */
export interface Made {
  readonly state: 'faultless' | 'checking' | 'wrong' | 'measuring' | 'ready' | 'failed';
  /** Of the draft as it is, or while it is checked as it was. */
  readonly examined: Examined | undefined;
  readonly survey: Survey | undefined;
  /** The draft as it was checked and found sound. */
  readonly sound: { readonly ticket: Ticket; readonly rig: RigData } | undefined;
}

const NOTHING: Made = { state: 'faultless', examined: undefined, survey: undefined, sound: undefined };

/** Equal for tickets that are as hard as each other, whatever they are called and however their customer puts it. */
const playedAlike = ({ id: _, order: __, skills: ___, told: ____, mode: _____, ...rest }: Ticket): string => JSON.stringify(rest);

/** Looks at a draft whenever it has changed: whether it stands, then how hard it is. @param rig as it left the factory */
export function useMade(draft: Ticket, rig: RigData): Made {
  const [made, setMade] = useState<Made>(NOTHING);
  const last = useRef<{ readonly key: string; readonly survey: Survey }>();
  useEffect(() => leaveMaking, []);
  useEffect(() => {
    if (draft.faults.length === 0) {
      setMade(NOTHING);
      return;
    }
    let current = true;
    setMade((before) => ({ ...before, state: 'checking', survey: undefined, sound: undefined }));
    const look = async () => {
      const tell = (next: Made) => current && setMade(next);
      const examined = await engineAlone().ask('examine', { json: draft, rig });
      if (!current) return;
      if (examined.error !== undefined) {
        tell({ ...NOTHING, state: 'wrong', examined });
        return;
      }
      const ticket = loadTicket(draft);
      const sound = { ticket, rig: layHouse(rig, ticket.house) };
      const key = playedAlike(ticket);
      if (last.current?.key === key) {
        tell({ state: 'ready', examined, survey: last.current.survey, sound });
        return;
      }
      tell({ ...NOTHING, state: 'measuring', examined, sound });
      const survey = await engineAlone().ask('survey', sound);
      last.current = { key, survey };
      tell({ state: 'ready', examined, survey, sound });
    };
    const timer = setTimeout(() => {
      look().catch(() => current && setMade((before) => ({ ...before, state: 'failed' })));
    }, PAUSE);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [draft, rig]);
  return made;
}
