import type { Classroom, Seat } from '../../classroom/room.ts';
import { clock, number, span, t } from '../words.ts';
import type { ClassRoom } from './use-class.ts';

/** Nothing was learnt for so long, seconds: the instructor may want to go there. Common practice, no source. */
const STUCK = 300;

/** Minutes that one press adds. */
const MORE = 5;

/** Who is where, how far they are, and who may need somebody. */
export function RoomTable({ place }: { readonly place: ClassRoom }) {
  const { seats, paused, run, api, link } = place;
  return (
    <section class="slip lab-room" aria-labelledby="room-title">
      <div class="lab-row">
        <h2 id="room-title">{t('lab:room.title')}</h2>
        <button
          type="button"
          class={paused ? 'button act' : 'button'}
          onClick={() =>
            void run(
              () => api.pause(!paused),
              () => t(paused ? 'lab:room.goesOn' : 'lab:room.isPaused'),
            )
          }
        >
          {t(paused ? 'lab:room.resume' : 'lab:room.pause')}
        </button>
      </div>
      <p role="status">{link.state === 'lost' ? t('lab:room.lost') : paused ? t('lab:room.isPaused') : ''}</p>
      {seats.length === 0 ? (
        <p>{t('lab:room.nobody')}</p>
      ) : (
        <table class="lab-table">
          <thead>
            <tr>
              {(['who', 'where', 'steps', 'left', 'stuck', 'time', 'state', 'do'] as const).map((each) => (
                <th key={each} scope="col">
                  {t(`lab:room.${each}`)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {seats.map((seat) => (
              <SeatRow key={seat.trainee} seat={seat} place={place} />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

const titleIn = (room: Classroom | undefined, id: string): string => room?.assignments.find((each) => each.id === id)?.title ?? id;

function whereIs(room: Classroom | undefined, { assignment, item, question }: NonNullable<Seat['at']>): string {
  const values = { assignment: titleIn(room, assignment), item: number(item + 1) };
  return t(question === undefined ? 'lab:room.at' : 'lab:room.atPaper', values);
}

const questionOf = ({ steps }: NonNullable<Seat['at']>, { at, of }: { readonly at: number; readonly of: number }): string =>
  t('lab:room.question', { at: number(at), of: number(of), count: steps, answered: number(steps) });

function stateOf({ connected, at }: Seat): 'away' | 'there' | 'working' | 'answering' | 'named' | 'closed' {
  if (!connected) return 'away';
  if (at === undefined) return 'there';
  return at.question !== undefined && at.phase === 'working' ? 'answering' : at.phase;
}

function SeatRow({ seat, place }: { readonly seat: Seat; readonly place: ClassRoom }) {
  const { room, run, api } = place;
  const { trainee, name, at } = seat;
  const { suspects } = at ?? {};
  const stuck = at?.phase === 'working' ? suspects?.stuckSeconds : undefined;
  const cells = [
    ['where', at && whereIs(room, at)],
    ['steps', at && (at.question === undefined ? number(at.steps) : questionOf(at, at.question))],
    ['left', suspects && t('lab:room.leftOf', { left: number(suspects.left), of: number(suspects.atStart) })],
    ['stuck', stuck === undefined || stuck < 60 ? undefined : span(Math.round(stuck / 60) * 60)],
    ['time', at?.secondsLeft === undefined ? undefined : clock(at.secondsLeft)],
  ] as const;
  return (
    <tr data-stuck={(stuck !== undefined && stuck >= STUCK) || undefined} data-trainee={trainee}>
      <th scope="row">
        {name || trainee}
        {name !== '' && <small>{trainee}</small>}
      </th>
      {cells.map(([column, words]) => (
        <td key={column} data-column={t(`lab:room.${column}`)} data-testid={column}>
          {words ?? '–'}
        </td>
      ))}
      <td data-column={t('lab:room.state')} data-testid="state">
        {t(`lab:room.is.${stateOf(seat)}`)}
      </td>
      <td data-column={t('lab:room.do')}>
        {at !== undefined && at.secondsLeft !== undefined && at.phase !== 'closed' && (
          <button
            type="button"
            class="button small"
            aria-label={t('lab:room.moreFor', { minutes: MORE, name: name || trainee })}
            onClick={() =>
              void run(
                () => api.extend(at.assignment, MORE, trainee),
                () => t('lab:room.added', { count: MORE, name: name || trainee }),
              )
            }
          >
            {t('lab:room.more', { minutes: MORE })}
          </button>
        )}
      </td>
    </tr>
  );
}
