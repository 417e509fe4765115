import '../css/debrief.css';
import '../css/pages.css';
import '../css/print.css';
import '../css/report.css';
import { OutsideExam } from '../drills/in-exam.tsx';
import { MOST_WORDS } from '../keeping/records.ts';
import { findTicket, rigOf } from '../library.ts';
import { OwnWords } from '../report/own-words.tsx';
import { ReportPaper } from '../report/report-paper.tsx';
import { useReport } from '../report/use-report.ts';
import { hrefOf } from '../router.ts';
import { useTitle } from '../shell.tsx';
import { keepWords } from '../storage.ts';
import { t } from '../words.ts';

type Ticket = NonNullable<ReturnType<typeof findTicket>>;

interface PageProps {
  readonly ticket: string;
  readonly number?: number;
}

/** What a technician leaves after the job: of the last finished attempt at the ticket, or of the one with this number. */
export function ReportPage({ ticket: id, number: at }: PageProps) {
  const ticket = findTicket(id);
  if (ticket === undefined) return null;
  return (
    <OutsideExam ticket={id}>
      <Opened ticket={ticket} at={at} />
    </OutsideExam>
  );
}

function Opened({ ticket, at }: { readonly ticket: Ticket; readonly at: number | undefined }) {
  const result = useReport(ticket, rigOf(ticket), at);
  useTitle(t('report:title'));
  return (
    <ReportPaper
      back={{ href: hrefOf('debrief', ticket.id, at), words: t('report:back') }}
      ticket={ticket.id}
      at={at}
      result={result}
      own={({ number, words }) => <Words at={number} words={words} />}
    />
  );
}

function Words({ at, words }: { readonly at: number | undefined; readonly words: string }) {
  return <OwnWords words={words} most={MOST_WORDS} keep={at === undefined ? undefined : (next) => keepWords(at, next)} />;
}
