import type { RigData } from '../../rig/schema.ts';
import { CautionList } from '../cautions/caution-panel.tsx';
import { Diagrams } from '../diagrams/fold.tsx';
import { TicketText } from '../ticket-text.tsx';
import { titleOf } from '../ticket-words.ts';
import type { JobFace } from '../use-attempt.ts';
import { Dialog } from './dialog.tsx';

interface Props {
  readonly ticket: JobFace;
  readonly rig: RigData;
  readonly onDone: () => void;
}

export function TicketDialog({ ticket, rig, onDone }: Props) {
  return (
    <Dialog title={titleOf(ticket.id, ticket.told)} onDone={onDone}>
      <TicketText ticket={ticket} rig={rig} />
      <Diagrams rig={rig} />
      <CautionList />
    </Dialog>
  );
}
