import type { Observed } from '../../attempt/job.ts';
import { MOST_OBSERVED, MOST_WORKS } from '../../scenario/population.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { VOICES } from '../../scenario/ticket.ts';
import type { Examined, Offer } from '../engine/making.ts';
import { partName, signText, t } from '../words.ts';
import { isObserved, toggled } from './draft.ts';
import { SelectField, Slip, Tick } from './fields.tsx';

interface Props {
  readonly draft: Ticket;
  readonly examined: Examined | undefined;
  readonly onDraft: (draft: Ticket) => void;
  /** Lets the signs follow from the fault and the story. */
  readonly onPropose: () => void;
}

const textOf = (part: string, sign: string, is: Observed['is'] | undefined): string => {
  const words = is === undefined ? '' : signText(sign, is);
  return t('app:notice', { part: partName(part), words: words === '' ? `${sign} ${is ?? '–'}` : words });
};

/** What the customer saw in the end, and what says that it works again: offered from what this fault and a sound system show. */
export function ComplaintSection({ draft, examined, onDraft, onPropose }: Props) {
  const { observed, works } = draft.complaint;
  const offers = examined?.offers ?? [];
  const put = (signs: Partial<Ticket['complaint']>) => onDraft({ ...draft, complaint: { ...draft.complaint, ...signs } });
  const differing = offers.filter(({ faulty, sound }) => faulty !== sound);
  return (
    <Slip title={t('builder:complaint.title')}>
      {offers.length === 0 ? (
        <p>{t('builder:complaint.later')}</p>
      ) : (
        <>
          <p>{differing.length > 0 ? t('builder:complaint.differs', { count: differing.length }) : t('builder:complaint.same')}</p>
          <div class="make-buttons">
            <button type="button" class="button small" onClick={onPropose}>
              {t('builder:complaint.propose')}
            </button>
          </div>
          <Signs
            legend={t('builder:complaint.observed')}
            offers={offers}
            list={observed}
            most={MOST_OBSERVED}
            marked
            shownAs={(offer) => offer.faulty}
            onList={(list) => put({ observed: list })}
          />
          <Signs
            legend={t('builder:complaint.works')}
            offers={differing}
            list={works}
            most={MOST_WORKS}
            shownAs={(offer) => offer.sound}
            onList={(list) => put({ works: list })}
          />
          <Told draft={draft} examined={examined} onDraft={onDraft} />
        </>
      )}
    </Slip>
  );
}

interface SignsProps {
  readonly legend: string;
  readonly offers: readonly Offer[];
  readonly list: readonly Observed[];
  readonly most: number;
  /** Whether what a sound system would not show is marked. */
  readonly marked?: boolean;
  readonly shownAs: (offer: Offer) => Observed['is'] | undefined;
  readonly onList: (list: Observed[]) => void;
}

function Signs({ legend, offers, list, most, marked = false, shownAs, onList }: SignsProps) {
  const shown = offers.filter((offer) => shownAs(offer) !== undefined);
  const stale = list.filter(
    ({ part, sign, is }) => !shown.some((offer) => offer.part === part && offer.sign === sign && shownAs(offer) === is),
  );
  return (
    <fieldset class="make-signs">
      <legend>{legend}</legend>
      {shown.map((offer) => {
        const is = shownAs(offer);
        const on = list.some((each) => each.part === offer.part && each.sign === offer.sign && each.is === is);
        return (
          <Tick
            key={`${offer.part} ${offer.sign}`}
            checked={on}
            disabled={!on && list.length >= most}
            onChange={() =>
              onList(
                isObserved(list, offer) && !on
                  ? [...toggled(list, offer, is), ...toggled([], offer, is)]
                  : toggled(list, offer, is),
              )
            }
          >
            {textOf(offer.part, offer.sign, is)}
            {marked && offer.faulty !== offer.sound && <b class="make-mark"> {t('builder:complaint.mark')}</b>}
          </Tick>
        );
      })}
      {stale.map((each) => (
        <Tick key={`${each.part} ${each.sign}`} checked onChange={() => onList(list.filter((other) => other !== each))}>
          {textOf(each.part, each.sign, each.is)} <b class="make-wrong">{t('builder:complaint.stale')}</b>
        </Tick>
      ))}
    </fieldset>
  );
}

/** What the customer says: put together from what they can tell. */
function Told({ draft, examined, onDraft }: Omit<Props, 'onPropose'>) {
  const { told: kept } = draft;
  const told = examined?.told;
  if (told === undefined) return null;
  const voice = kept?.voice ?? 1;
  return (
    <>
      <blockquote class="complaint make-complaint">
        {t(`ticket:made.say.${told.symptom}.${voice}`)} {t(`ticket:made.heard.${told.heard}`)}
      </blockquote>
      <SelectField
        label={t('builder:complaint.voice')}
        value={String(voice)}
        options={Array.from({ length: VOICES }, (_, index) => [String(index + 1), String(index + 1)] as const)}
        onValue={(value) => onDraft({ ...draft, told: { ...told, voice: Number(value), job: kept?.job ?? 1 } })}
      />
    </>
  );
}
