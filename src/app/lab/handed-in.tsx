import { useEffect, useRef, useState } from 'preact/hooks';
import '../css/debrief.css';
import '../css/print.css';
import '../css/report.css';
import { LONGEST_WORDS } from '../../classroom/protocol.ts';
import { ReportSheet } from '../report/sheet.tsx';
import { number, t } from '../words.ts';
import { useHostedBench } from './hosted-bench.ts';
import { SeatHead } from './seat-head.tsx';
import type { Opened, Seat } from './seat-state.ts';
import { useStore } from './store.ts';

/** After an attempt: one's own words, and that it is handed in. No score and no truth: those are the instructor's. */
export function HandedIn({ seat }: { readonly seat: Seat }) {
  const bench = useHostedBench(seat);
  const { open, signedIn, wordsKept } = useStore(seat);
  const [done, setDone] = useState(false);
  if (open?.over === undefined || bench === undefined) return null;
  const { how, report } = open.over;
  const isIn = done && wordsKept;
  const reported = {
    ticket: bench.ticket,
    rig: bench.rig,
    report,
    view: bench.view,
    told: bench.told,
    name: signedIn?.name ?? '',
  };
  return (
    <div class="paper">
      <SeatHead seat={seat} />
      <main class="report">
        <div class="report-head">
          <div>
            <h1 tabIndex={-1}>{t(isIn ? 'lab:done.title' : `lab:over.${how}`)}</h1>
            <p>{t(isIn ? 'lab:done.text' : 'lab:over.text')}</p>
          </div>
          <button type="button" class="button" onClick={seat.leave}>
            {t('lab:toList')}
          </button>
        </div>
        <p class="report-caution">{t('report:caution')}</p>
        <ReportSheet reported={reported}>
          <Words key={`${open.assignment} ${open.item} ${open.number}`} open={open} seat={seat} onDone={() => setDone(true)} />
        </ReportSheet>
      </main>
    </div>
  );
}

interface WordsProps {
  readonly open: Opened;
  readonly seat: Seat;
  readonly onDone: () => void;
}

/** What is written goes to the host after this, milliseconds. */
const WRITES_AFTER = 1000;

function Words({ open, seat, onDone }: WordsProps) {
  const { failed, wordsKept } = useStore(seat);
  const [words, setWords] = useState(open.words);
  const [sent, setSent] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout>>();
  useEffect(() => () => clearTimeout(timer.current), []);
  const write = (next: string) => {
    setWords(next);
    setSent(false);
    clearTimeout(timer.current);
    timer.current = setTimeout(() => seat.write(next), WRITES_AFTER);
  };
  const handIn = () => {
    clearTimeout(timer.current);
    seat.write(words);
    setSent(true);
    onDone();
    document.querySelector<HTMLElement>('h1')?.focus();
    scrollTo(0, 0);
  };
  return (
    <section aria-labelledby="report-words">
      <h2 id="report-words">{t('report:words.title')}</h2>
      <div class="report-writing">
        <p id="report-words-hint">{t('lab:words')}</p>
        <textarea
          aria-labelledby="report-words"
          aria-describedby="report-words-hint"
          rows={6}
          maxLength={LONGEST_WORDS}
          value={words}
          onInput={(event) => write(event.currentTarget.value)}
        />
        <p class="report-count">{t('report:words.count', { used: number(words.length), most: number(LONGEST_WORDS) })}</p>
        <p role="status">
          {failed !== undefined && !wordsKept ? t('lab:wordsNotKept') : sent && wordsKept ? t('lab:wordsKept') : ''}
        </p>
        <button type="button" class="button act" onClick={handIn}>
          {t('lab:handIn')}
        </button>
      </div>
      <p class={words.trim() === '' ? 'report-lines' : 'report-words'} aria-hidden="true">
        {words}
      </p>
    </section>
  );
}
