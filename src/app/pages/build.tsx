import { useEffect, useState } from 'preact/hooks';
import '../css/pages.css';
import '../css/making.css';
import { dataError } from '../../rig/errors.ts';
import { layHouse } from '../../rig/house.ts';
import type { RigData } from '../../rig/schema.ts';
import { rigFor } from '../../scenario/library.ts';
import { loadTicket, type Ticket } from '../../scenario/ticket.ts';
import { isListed } from '../board.ts';
import { Diagrams } from '../diagrams/fold.tsx';
import { parseJson } from '../json-text.ts';
import { enrol, rigs } from '../library.ts';
import { ComplaintSection } from '../making/complaint-section.tsx';
import { newDraft, proposed } from '../making/draft.ts';
import { whyNot } from '../making/error-text.ts';
import { FaultSection, SuspectsSection } from '../making/fault-section.tsx';
import { FileButton, SelectField, Slip } from '../making/fields.tsx';
import { HandOn } from '../making/hand-on.tsx';
import { HouseSection } from '../making/house-section.tsx';
import { JsonSection, MOST_CHARACTERS } from '../making/json-section.tsx';
import { keepMaking, loadDraft, readMaking } from '../making/kept.ts';
import { ResultPanel } from '../making/result-panel.tsx';
import { ListSection, RulesSection } from '../making/rules-section.tsx';
import { StorySection } from '../making/story-section.tsx';
import { type Made, useMade } from '../making/use-made.ts';
import { Ways } from '../making/ways.tsx';
import { go, hrefOf } from '../router.ts';
import { BackHead, useTitle } from '../shell.tsx';
import { t } from '../words.ts';

const firstRig = (): RigData => {
  const rig = rigs.get('furnaceAndCondenser') ?? [...rigs.values()][0];
  if (rig === undefined) throw new Error('no rig ships');
  return rig;
};

/** The draft with what the customer says, in words that go with what they can tell. */
function withTold(ticket: Ticket, told: NonNullable<Made['examined']>['told']): Ticket {
  if (told === undefined || (ticket.told === undefined && isListed(ticket.id))) return ticket;
  return { ...ticket, told: { voice: 1, job: 1, ...ticket.told, ...told } };
}

/** Where an instructor makes a ticket: what is chosen on one side, what it comes to on the other. */
export function BuildPage() {
  const [draft, setDraft] = useState(() => readMaking('ticket', loadDraft) ?? newDraft(firstRig()));
  /** The signs follow from fault and story, until a hand picks them. */
  const [follows, setFollows] = useState(draft.faults.length === 0);
  const [said, setSaid] = useState('');
  const rig = rigs.get(draft.rig) ?? firstRig();
  const made = useMade(draft, rig);
  useTitle(t('builder:title'));
  useEffect(() => keepMaking('ticket', draft), [draft]);
  useEffect(() => {
    const offers = made.examined?.offers ?? [];
    if (!follows || offers.length === 0 || made.state === 'checking') return;
    const signs = proposed(offers);
    const { observed, works } = draft.complaint;
    if (JSON.stringify(signs) !== JSON.stringify({ observed, works }))
      setDraft({ ...draft, complaint: { ...draft.complaint, ...signs } });
  }, [follows, made, draft]);
  const put = (next: Ticket) => {
    setSaid('');
    setDraft(next);
  };
  /** A ticket from outside, as far as its shape and its house are sound: the rest is told beside it. */
  const open = (text: string | undefined) => {
    const ticket = loadTicket(parseJson(text, MOST_CHARACTERS));
    rigFor(rigs, ticket);
    setFollows(false);
    put(ticket);
  };
  const ticket = made.sound && withTold(made.sound.ticket, made.examined?.told);
  const laid = made.sound?.rig ?? layHouse(rig, undefined);
  return (
    <>
      <BackHead />
      <main class="sheet making">
        <div class="make-head">
          <h1 tabIndex={-1}>{t('builder:title')}</h1>
          <Ways to="assign" />
          <div class="make-buttons">
            <FileButton
              words={t('builder:open')}
              onText={(text, name) => {
                try {
                  open(text);
                  setSaid(t('builder:opened', { file: name }));
                } catch (error) {
                  setSaid(whyNot(error, name));
                }
              }}
            />
            <button
              type="button"
              class="button"
              onClick={() => {
                setFollows(true);
                put(newDraft(rig));
              }}
            >
              {t('builder:fresh')}
            </button>
          </div>
          <p role="status" data-testid="said">
            {said}
          </p>
        </div>
        <div class="make-form">
          <Slip title={t('builder:rig.title')}>
            <SelectField
              label={t('builder:rig.which')}
              value={draft.rig}
              options={[...rigs.keys()].map((id) => [id, t(`rig:name.${id}`)] as const)}
              onValue={(id) => {
                const next = rigs.get(id);
                if (next === undefined) return;
                setFollows(true);
                put(newDraft(next));
              }}
            />
            <Diagrams key={rig.id} rig={laid} />
          </Slip>
          <FaultSection key={`fault ${draft.rig}`} draft={draft} rig={rig} onDraft={put} />
          <StorySection draft={draft} rig={rig} onDraft={put} />
          <ComplaintSection
            draft={draft}
            examined={made.examined}
            onPropose={() => setFollows(true)}
            onDraft={(next) => {
              setFollows(false);
              put(next);
            }}
          />
          <RulesSection draft={draft} onDraft={put} />
          <HouseSection draft={draft} rig={rig} onDraft={put} />
          <SuspectsSection draft={draft} rig={rig} onDraft={put} />
          <ListSection draft={draft} onDraft={put} />
          <JsonSection
            json={ticket ?? draft}
            onText={(text) => {
              const json = parseJson(text, MOST_CHARACTERS);
              if (typeof json !== 'object' || json === null) throw dataError('data.shape', '(file)');
              open(text);
            }}
          />
        </div>
        <aside class="make-side slip" aria-label={t('builder:result.title')}>
          <h2>{t('builder:result.title')}</h2>
          <ResultPanel made={made} />
          <div class="make-buttons">
            <button
              type="button"
              class="button act"
              disabled={ticket === undefined}
              onClick={() => ticket && go(hrefOf('bench', enrol(ticket, { home: hrefOf('build') })))}
            >
              {t('builder:play')}
            </button>
          </div>
          <HandOn json={ticket} name={draft.id} page="play" />
        </aside>
      </main>
    </>
  );
}
