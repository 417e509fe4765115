import type { Ticket } from '../../scenario/ticket.ts';
import { CautionList } from '../cautions/caution-panel.tsx';
import { Diagrams } from '../diagrams/fold.tsx';
import { rigOf } from '../library.ts';
import { TicketText } from '../ticket-text.tsx';
import { titleOf } from '../ticket-words.ts';
import { Dialog } from './dialog.tsx';

export function TicketDialog({ ticket, onDone }: { readonly ticket: Ticket; readonly onDone: () => void }) {
  return (
    <Dialog title={titleOf(ticket.id)} onDone={onDone}>
      <TicketText ticket={ticket} />
      <Diagrams rig={rigOf(ticket)} />
      <CautionList />
    </Dialog>
  );
}
