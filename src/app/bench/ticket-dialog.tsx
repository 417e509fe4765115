import type { Ticket } from '../../scenario/ticket.ts';
import { CautionList } from '../cautions/caution-panel.tsx';
import { TicketText } from '../ticket-text.tsx';
import { t } from '../words.ts';
import { Dialog } from './dialog.tsx';

export function TicketDialog({ ticket, onDone }: { readonly ticket: Ticket; readonly onDone: () => void }) {
  return (
    <Dialog title={t(`ticket:${ticket.id}.title`)} onDone={onDone}>
      <TicketText ticket={ticket} />
      <CautionList />
    </Dialog>
  );
}
