import { useCallback, useLayoutEffect, useState } from 'preact/hooks';
import { METER_FUNCTIONS } from '../../meter/functions.ts';
import type { Point } from '../../rig/points.ts';
import { useSetting } from '../settings.ts';
import type { Bench } from '../use-attempt.ts';
import { t } from '../words.ts';

export const TOOLS = ['hand', 'lift', 'jumper', 'clamp', 'look', 'tug'] as const;
export type Tool = (typeof TOOLS)[number];
export type Lead = 'red' | 'black';

/** What is in the trainee's hands: a tool, and perhaps a lead that waits for its terminal. Nothing of it is in the log. */
export interface Leads {
  readonly held: Lead | undefined;
  /** Whether the lead was picked with the keyboard, so that its terminal is asked for by letter. */
  readonly byKey: boolean;
  readonly tool: Tool;
  readonly pick: (lead: Lead | undefined) => void;
  readonly place: (at: Point) => void;
  readonly choose: (tool: Tool) => void;
  readonly keys: boolean;
  readonly setKeys: (on: boolean) => void;
}

const TYPING = 'input, select, textarea, [contenteditable], dialog';

/** The meter's keys in the order of the meter; on the keyboard 1, 2, 3 …, and 0 turns it off. */
export const METER_KEYS = METER_FUNCTIONS.filter((fn) => fn !== 'off');

/** The two leads and the tool. R or B picks a lead, a digit a function, wherever the focus is, unless single keys are turned off. */
export function useLeads(bench: Bench): Leads {
  const [held, setHeld] = useState<Lead>();
  const [byKey, setByKey] = useState(false);
  const [tool, setTool] = useState<Tool>('hand');
  const [keysKept, keepKeys] = useSetting('keys');
  const keys = keysKept === 'on';
  const { act, say } = bench;

  const pick = useCallback(
    (lead: Lead | undefined) => {
      setHeld(lead);
      setByKey(false);
      if (lead !== undefined) say(t(`app:lead.picked.${lead}`));
    },
    [say],
  );

  useLayoutEffect(() => {
    if (!keys) return undefined;
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      if (event.target instanceof Element && event.target.closest(TYPING) !== null) return;
      const fn = event.key === '0' ? 'off' : METER_KEYS[Number(event.key) - 1];
      if (fn !== undefined) {
        event.preventDefault();
        act({ name: 'meter', fn });
        return;
      }
      const letter = event.key.toLowerCase();
      if (letter !== 'r' && letter !== 'b') return;
      event.preventDefault();
      setHeld(letter === 'r' ? 'red' : 'black');
      setByKey(true);
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [keys, act]);

  const place = useCallback(
    (at: Point) => {
      if (held !== undefined) act({ name: 'probe', lead: held, at });
      setHeld(undefined);
    },
    [held, act],
  );

  return { held, byKey, tool, pick, place, choose: setTool, keys, setKeys: (on) => keepKeys(on ? 'on' : 'off') };
}
