import type { ComponentChild, ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Route, Router, Switch, useLocation } from 'wouter-preact';
import { useHashLocation } from 'wouter-preact/use-hash-location';
import { isThere } from './board.ts';
import { isLocked, leaveWhenGone } from './keeping/profile-now.ts';
import { loadAllWords } from './language.ts';
import { HomePage } from './pages/home.tsx';
import { UnknownPage } from './pages/unknown.tsx';
import { useLanguage } from './use-language.ts';
import { t } from './words.ts';

/** The whole page: one route at a time. All but the first are fetched when they are first asked for. */
export function App() {
  useEffect(leaveWhenGone, []);
  const language = useLanguage();
  if (isLocked()) return <Later ticket="" load={loadPinGate} />;
  return (
    // Another language is another page: whatever was put in words is put in words anew.
    <Router key={language} hook={useHashLocation}>
      <FocusOnArrival />
      <Switch>
        <Route path="/">
          <HomePage />
        </Route>
        <Route path="/progress">
          <Later ticket="" load={loadProgress} />
        </Route>
        <Route path="/guide">
          <Later ticket="" load={loadGuide} />
        </Route>
        <Route path="/settings">
          <Later ticket="" load={loadSettings} />
        </Route>
        <Route path="/drills">
          <Later ticket="" load={loadDrills} />
        </Route>
        {/* One page: the exam's clock runs on while one is at the bench. */}
        <Route path="/exams/:ticket?">
          {({ ticket }) => {
            if (ticket === undefined) return <Later ticket="" load={loadExams} />;
            return /^[1-9]\d?$/.test(ticket) ? <Later ticket="" number={Number(ticket)} load={loadExams} /> : <UnknownPage />;
          }}
        </Route>
        <Route path="/drills/bench">
          <Later ticket="" load={loadDrillBench} />
        </Route>
        <Route path="/build">
          <Later ticket="" load={loadBuild} />
        </Route>
        <Route path="/assign">
          <Later ticket="" load={loadAssign} />
        </Route>
        <Route path="/gradebook">
          <Later ticket="" load={loadGradebook} />
        </Route>
        <Route path="/gradebook/report/:code?">
          {({ code = '' }) => <Later key={`reports ${code}`} ticket={code} load={loadTraineeReports} />}
        </Route>
        <Route path="/play/:data">{({ data }) => <Later key={data} ticket={data} load={loadPlay} />}</Route>
        <Route path="/ticket/:ticket">
          {({ ticket }) => known(ticket, (id) => <Later key={`ticket ${id}`} ticket={id} load={loadTicket} />)}
        </Route>
        <Route path="/bench/:ticket">
          {({ ticket }) => known(ticket, (id) => <Later key={`bench ${id}`} ticket={id} load={loadBench} />)}
        </Route>
        <Route path="/debrief/:ticket/:number?">{attemptPage('debrief', loadDebrief)}</Route>
        <Route path="/report/:ticket/:number?">{attemptPage('report', loadReport)}</Route>
        <Route path="/take/:data?">{({ data = '' }) => <Later key={`take ${data}`} ticket={data} load={loadTake} />}</Route>
        <Route path="/assigned/:id">{({ id }) => <Later key={`assigned ${id}`} ticket={id} load={loadAssigned} />}</Route>
        <Route path="/assigned/:id/:item">
          {({ id, item }) =>
            /^\d{1,2}$/.test(item) ? (
              <Later key={`work ${id} ${item}`} ticket={id} number={Number(item)} load={loadAssignedBench} />
            ) : (
              <UnknownPage />
            )
          }
        </Route>
        <Route path="/assigned/:id/questions/:item/:number?">
          {({ id, item, number = '' }) =>
            /^\d{1,2} ([1-9]\d?)?$/.test(`${item} ${number}`) ? (
              <Later
                key={`questions ${id} ${item} ${number}`}
                ticket={`${id}/${item}`}
                number={Number(number)}
                load={number === '' ? loadAssignedPaper : loadAssignedReview}
              />
            ) : (
              <UnknownPage />
            )
          }
        </Route>
        <Route path="/assigned/:id/:item/:number/report">
          {({ id, item, number }) =>
            /^\d{1,2} [1-9]\d?$/.test(`${item} ${number}`) ? (
              <Later key={`${id} ${item} ${number}`} ticket={`${id}/${item}`} number={Number(number)} load={loadAssignedReport} />
            ) : (
              <UnknownPage />
            )
          }
        </Route>
        <Route path="/lab">
          <Later ticket="" load={loadLab} />
        </Route>
        <Route path="/class">
          <Later ticket="" load={loadClass} />
        </Route>
        <Route path="/live/:ticket">
          {({ ticket }) => known(ticket, (id) => <Later key={`live ${id}`} ticket={id} load={loadLive} />)}
        </Route>
        <Route>
          <UnknownPage />
        </Route>
      </Switch>
    </Router>
  );
}

function known(ticket: string, page: (id: string) => ComponentChild): ComponentChild {
  return isThere(ticket) ? page(ticket) : <UnknownPage />;
}

/** Whether the page that was asked for is still on its way, and its heading with it. */
let awaited = false;

function focusHeading(): void {
  const heading = document.querySelector<HTMLElement>('h1');
  heading?.focus();
  awaited = heading === null;
}

/** A page of one finished attempt: the last one, or the one that the address names by its number. */
function attemptPage(page: string, load: Loader) {
  return ({ ticket, number }: { ticket: string; number?: string | undefined }) => {
    if (number !== undefined && !/^[1-9]\d{0,8}$/.test(number)) return <UnknownPage />;
    const of = number === undefined ? {} : { number: Number(number) };
    return known(ticket, (id) => <Later key={`${page} ${id} ${number}`} ticket={id} load={load} {...of} />);
  };
}

/** A new page is told to whoever cannot see it change: its heading takes the focus. */
function FocusOnArrival() {
  const [location] = useLocation();
  const [first] = useState(location);
  useEffect(() => {
    if (location === first) return;
    focusHeading();
    scrollTo(0, 0);
  }, [location, first]);
  return null;
}

type TicketProps = { readonly ticket: string; readonly number?: number };
type Loader = () => Promise<ComponentType<TicketProps>>;

const loadPinGate: Loader = async () => (await import('./pages/progress.tsx')).PinGatePage;
const loadProgress: Loader = async () => (await import('./pages/progress.tsx')).ProgressPage;
const loadGuide: Loader = async () => (await import('./pages/guide.tsx')).GuidePage;
const loadTicket: Loader = async () => (await import('./pages/ticket.tsx')).TicketPage;
const loadSettings: Loader = async () => (await import('./pages/settings.tsx')).SettingsPage;
const loadDrills: Loader = async () => (await import('./pages/drills.tsx')).DrillsPage;
const loadExams: Loader = async () => (await import('./pages/exams.tsx')).ExamsPage;
const loadDrillBench: Loader = async () => (await import('./pages/drill-bench.tsx')).DrillBenchPage;
const loadBuild: Loader = async () => (await import('./pages/build.tsx')).BuildPage;
const loadAssign: Loader = async () => (await import('./pages/assign.tsx')).AssignPage;
const loadGradebook: Loader = async () => (await import('./pages/gradebook.tsx')).GradebookPage;
const loadTraineeReports: Loader = async () => (await import('./pages/trainee-reports.tsx')).TraineeReportsPage;
const loadPlay: Loader = async () => (await import('./pages/play.tsx')).PlayPage;
const loadBench: Loader = async () => (await import('./pages/bench.tsx')).BenchPage;
const loadTake: Loader = async () => (await import('./pages/take.tsx')).TakePage;
const loadAssigned: Loader = async () => (await import('./pages/assigned.tsx')).AssignedPage;
const loadAssignedBench: Loader = async () => (await import('./pages/assigned-bench.tsx')).AssignedBenchPage;
const loadAssignedPaper: Loader = async () => (await import('./pages/assigned-paper.tsx')).AssignedPaperPage;
const loadAssignedReview: Loader = async () => (await import('./pages/assigned-review.tsx')).AssignedReviewPage;
const loadAssignedReport: Loader = async () => (await import('./pages/assigned-report.tsx')).AssignedReportPage;
const loadLab: Loader = async () => (await import('./pages/lab.tsx')).LabPage;
const loadClass: Loader = async () => (await import('./pages/class.tsx')).ClassPage;
const loadLive: Loader = async () => (await import('./pages/bench.tsx')).LivePage;
const loadDebrief: Loader = async () => (await import('./pages/debrief.tsx')).DebriefPage;
const loadReport: Loader = async () => (await import('./pages/report.tsx')).ReportPage;

function Later({ load, ...props }: TicketProps & { readonly load: Loader }) {
  const [Page, setPage] = useState<ComponentType<TicketProps>>();
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let current = true;
    Promise.all([load(), loadAllWords()]).then(
      ([page]) => current && setPage(() => page),
      () => current && setFailed(true),
    );
    return () => {
      current = false;
    };
  }, [load]);
  useEffect(() => {
    if (Page !== undefined && awaited) focusHeading();
  }, [Page]);
  if (Page !== undefined) return <Page {...props} />;
  return (
    <main class="waiting" aria-busy={!failed}>
      <p role="status">{failed ? t('app:loadFailed') : t('app:loading')}</p>
    </main>
  );
}
