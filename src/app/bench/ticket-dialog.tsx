import type { Ticket } from '../../scenario/ticket.ts';
import { CautionList } from '../cautions/caution-panel.tsx';
import { Diagrams } from '../diagrams/fold.tsx';
import { rigOf } from '../library.ts';
import { TicketText } from '../ticket-text.tsx';
import { t } from '../words.ts';
import { Dialog } from './dialog.tsx';

export function TicketDialog({ ticket, onDone }: { readonly ticket: Ticket; readonly onDone: () => void }) {
  return (
    <Dialog title={t(`ticket:${ticket.id}.title`)} onDone={onDone}>
      <TicketText ticket={ticket} />
      <Diagrams rig={rigOf(ticket)} />
      <CautionList />
    </Dialog>
  );
}
