import type { House } from '../../rig/house.ts';
import { type RigData, WIRE_COLOURS } from '../../rig/schema.ts';
import type { Ticket } from '../../scenario/ticket.ts';
import { degreeSign, length, settingOf, shownDegrees, shownRange } from '../units.ts';
import { number, t, wireName } from '../words.ts';
import { said } from './draft.ts';
import { NumberField, SelectField, Slip } from './fields.tsx';

interface Props {
  readonly draft: Ticket;
  readonly rig: RigData;
  readonly onDraft: (draft: Ticket) => void;
}

interface DegreesProps {
  readonly label: string;
  readonly value: number | undefined;
  readonly otherwise: number;
  readonly from: number;
  readonly to: number;
  readonly onValue: (fahrenheit: number | undefined) => void;
}

/** A temperature on the reader's scale, kept in whole °F. */
function DegreesField({ label, value, otherwise, from, to, onValue }: DegreesProps) {
  const range = { from, to, step: 1, press: 1 };
  return (
    <NumberField
      label={`${label} (${degreeSign()})`}
      value={value === undefined ? undefined : shownDegrees(value)}
      otherwise={shownDegrees(otherwise)}
      {...shownRange(range)}
      onValue={(entered) => onValue(entered === undefined ? undefined : settingOf(entered, range))}
    />
  );
}

/** How this house differs from the rig's own, and its weather. What is left empty is the rig's. */
export function HouseSection({ draft, rig, onDraft }: Props) {
  const { weather } = draft;
  const house: House = draft.house ?? {};
  const putWeather = (next: Ticket['weather']) => onDraft({ ...draft, weather: said({ ...weather, ...next }) ?? {} });
  const putHouse = (next: House) => {
    const { house: _, ...rest } = draft;
    const kept = said({ ...house, ...next });
    onDraft(kept === undefined ? rest : { ...rest, house: kept });
  };
  const start = rig.rooms[0]?.startFahrenheit ?? 68;
  return (
    <Slip title={t('builder:house.title')} folded>
      <p>{t('builder:house.text')}</p>
      <div class="make-row">
        <DegreesField
          label={t('builder:house.outdoor')}
          value={weather.outdoorFahrenheit}
          otherwise={rig.outdoorFahrenheit}
          from={-60}
          to={130}
          onValue={(outdoorFahrenheit) => putWeather({ outdoorFahrenheit })}
        />
        <DegreesField
          label={t('builder:house.start')}
          value={weather.startFahrenheit}
          otherwise={start}
          from={-20}
          to={120}
          onValue={(startFahrenheit) => putWeather({ startFahrenheit })}
        />
      </div>
      {rig.cables.map(({ id }) => (
        <Cable key={id} id={id} rig={rig} house={house} onHouse={putHouse} />
      ))}
      {rig.rooms.map((room) => (
        <Room key={room.id} room={room} house={house} several={rig.rooms.length > 1} onHouse={putHouse} />
      ))}
    </Slip>
  );
}

interface PieceProps {
  readonly house: House;
  readonly onHouse: (house: House) => void;
}

function Cable({ id, rig, house, onHouse }: PieceProps & { readonly id: string; readonly rig: RigData }) {
  const wires = rig.wires.filter((wire) => wire.cable === id);
  const own = house.cables?.[id];
  const feet = Math.max(...wires.map((wire) => wire.feet));
  const put = (next: NonNullable<House['cables']>[string]) =>
    onHouse({ cables: said({ ...house.cables, [id]: said({ ...own, ...next }) ?? {} }) });
  return (
    <fieldset>
      <legend>{t(`rig:cable.${id}`)}</legend>
      <div class="make-row">
        <NumberField
          label={t('builder:house.feet', { length: length(own?.feet ?? feet) })}
          value={own?.feet}
          otherwise={feet}
          from={1}
          to={500}
          onValue={(value) => put({ feet: value })}
        />
        <NumberField
          label={t('builder:house.awg')}
          value={own?.awg}
          otherwise={wires[0]?.awg ?? 18}
          from={14}
          to={24}
          step={1}
          onValue={(value) => put({ awg: value })}
        />
      </div>
      <div class="make-row">
        {wires.map((wire) => (
          <SelectField
            key={wire.id}
            label={wireName(wire.id)}
            value={house.colours?.[wire.id] ?? ''}
            none={t('builder:house.usual', { colour: t(`builder:colour.${wire.colour}`) })}
            options={WIRE_COLOURS.filter((each) => each !== wire.colour).map(
              (each) => [each, t(`builder:colour.${each}`)] as const,
            )}
            onValue={(colour) => {
              const { [wire.id]: _, ...rest } = house.colours ?? {};
              // The first entry has no value: the usual colour.
              const picked = WIRE_COLOURS.find((each) => each === colour);
              onHouse({ colours: said(picked === undefined ? rest : { ...rest, [wire.id]: picked }) });
            }}
          />
        ))}
      </div>
    </fieldset>
  );
}

type RoomData = RigData['rooms'][number];

/** The figures of a room that a house may have otherwise, with their limits. */
const ROOM_FIGURES = [
  ['lossBtuPerHourFahrenheit', 10, 5000],
  ['massBtuPerFahrenheit', 50, 50_000],
  ['gainsBtuPerHour', -50_000, 50_000],
] as const;

function Room({ room, house, several, onHouse }: PieceProps & { readonly room: RoomData; readonly several: boolean }) {
  const own = house.rooms?.[room.id];
  const put = (next: NonNullable<House['rooms']>[string]) =>
    onHouse({ rooms: said({ ...house.rooms, [room.id]: said({ ...own, ...next }) ?? {} }) });
  return (
    <fieldset>
      <legend>{several ? t('builder:house.roomNamed', { room: room.id }) : t('builder:house.room')}</legend>
      <div class="make-row">
        <DegreesField
          label={t('builder:house.start')}
          value={own?.startFahrenheit}
          otherwise={room.startFahrenheit}
          from={-20}
          to={120}
          onValue={(startFahrenheit) => put({ startFahrenheit })}
        />
        {ROOM_FIGURES.map(([figure, from, to]) => (
          <NumberField
            key={figure}
            label={t(`builder:house.${figure}`)}
            value={own?.[figure]}
            otherwise={number(room[figure])}
            from={from}
            to={to}
            onValue={(value) => put({ [figure]: value })}
          />
        ))}
      </div>
    </fieldset>
  );
}
