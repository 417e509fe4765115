import { useCallback, useEffect, useMemo } from 'preact/hooks';
import { replay } from '../../attempt/attempt.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { MenuDialog } from '../bench/menu-dialog.tsx';
import { findTicket } from '../library.ts';
import { retell } from '../retell.ts';
import { assignedHref, go, rememberJob } from '../router.ts';
import { useTitle } from '../shell.tsx';
import { Countdown } from '../taking/countdown.tsx';
import { keeperOf } from '../taking/keeper.ts';
import { Opening } from '../taking/opening.tsx';
import type { KeptWork } from '../taking/records.ts';
import { deadlineOf } from '../taking/status.ts';
import { amendWork } from '../taking/store.ts';
import { guestFor, readTaken, type Taken } from '../taking/use-assigned.ts';
import { titleOf } from '../ticket-words.ts';
import { type Loaded, useAttempt } from '../use-attempt.ts';
import { Waiting } from '../waiting.tsx';
import { t } from '../words.ts';
import { BenchScreen } from './bench.tsx';

interface PageProps {
  /** Id of the kept assignment. */
  readonly ticket: string;
  /** Place of the item. */
  readonly number?: number;
}

/** The bench of an item's running attempt; without one, back to the assignment. One tab at a time. */
export function AssignedBenchPage({ ticket: id, number: item = 0 }: PageProps) {
  return (
    <Opening id={id} item={item} open={open}>
      {(opened) => <AtWork opened={opened} />}
    </Opening>
  );
}

interface Opened {
  readonly taken: Taken;
  readonly kept: KeptWork;
  readonly ticket: Ticket;
  readonly loaded: Loaded;
}

/** @throws where the log does not replay, or the browser denies its storage */
async function open(id: string, item: number): Promise<Opened | undefined> {
  const taken = await readTaken(id);
  const work = taken?.works[item];
  const kept = taken?.kept.find((each) => each.item === item && each.ended === undefined);
  if (taken === undefined || work === undefined || kept === undefined) return undefined;
  const ticket = findTicket(guestFor(taken.assigned, work, kept.number));
  if (ticket === undefined) return undefined;
  const actions = replay(ticket, work.rig, kept.log).steps.map((step) => step.action);
  const origin = actions.length === 0 ? 'begun' : 'resumed';
  return { taken, kept, ticket, loaded: { ticket, ...retell(ticket, work.rig, actions), origin } };
}

function AtWork({ opened }: { readonly opened: Opened }) {
  const { taken, kept, ticket, loaded } = opened;
  const { id, assignment } = taken.assigned;
  const rig = taken.works[kept.item]?.rig ?? loaded.attempt.assembly.rig;
  const deadline = deadlineOf(assignment, kept);
  const keeper = useMemo(() => keeperOf(id, kept, loaded, deadline), [id, kept, loaded, deadline]);
  const bench = useAttempt(ticket, rig, false, keeper);
  useTitle(titleOf(ticket.id));
  const home = assignedHref(id);
  const phase = bench?.view.phase;
  useEffect(() => {
    rememberJob(phase === 'closed' ? undefined : assignedHref(id, kept.item));
    // The step is kept first.
    if (phase === 'closed') void keeper.kept().then(() => go(home, true));
  }, [phase, id, kept, keeper, home]);
  const timeOver = useCallback(() => {
    rememberJob(undefined);
    void keeper.kept().then(async () => {
      await amendWork(id, kept, { ended: 'timeOver' });
      go(home, true);
    });
  }, [keeper, id, kept, home]);
  if (bench === undefined || phase === 'closed') return <Waiting />;
  return (
    <BenchScreen
      bench={bench}
      beside={{
        count: deadline === undefined ? null : <Countdown deadline={deadline} onOver={timeOver} />,
        cover: null,
        menu: (onDone) => (
          <MenuDialog free={false} onDone={onDone}>
            <a class="button" href={home}>
              {t('take:back')}
            </a>
          </MenuDialog>
        ),
      }}
    />
  );
}
