import type { Assembly } from '../../rig/assemble.ts';
import type { RigWire } from '../../rig/schema.ts';
import { markOf } from '../../stage/wireMarks.ts';
import { partName, placeName, t } from '../words.ts';
import { labelAt } from './labels.ts';

/** Every wire that ends in a place: its colour, and from where to where. */
export function WireTable({ assembly, place }: { readonly assembly: Assembly; readonly place: string }) {
  const partAt = (point: string) => assembly.partById.get(point.split('.')[0] ?? '');
  const here = (wire: RigWire) => [wire.from, wire.to].some((point) => partAt(point)?.data.place === place);
  const end = (point: string) => {
    const part = partAt(point);
    const name = `${partName(part?.id ?? '')} ${labelAt(assembly, point)}`.trim();
    return part?.data.place === place ? name : t('diagram:elsewhere', { name, place: placeName(part?.data.place ?? '') });
  };
  return (
    <div class="diagram-scroll">
      <table class="diagram-table">
        <thead>
          <tr>
            <th scope="col">{t('diagram:table.wire')}</th>
            <th scope="col">{t('diagram:table.from')}</th>
            <th scope="col">{t('diagram:table.to')}</th>
          </tr>
        </thead>
        <tbody>
          {assembly.rig.wires
            .filter((wire) => !wire.pin && here(wire))
            .map((wire) => (
              <tr key={wire.id}>
                <th scope="row">
                  {markOf(wire.colour).code} <small>{t(`app:colour.${wire.colour}`)}</small>
                </th>
                <td>{end(wire.from)}</td>
                <td>{end(wire.to)}</td>
              </tr>
            ))}
        </tbody>
      </table>
    </div>
  );
}
