import { MOST_WEIGHT } from '../../classroom/weights.ts';
import { percent, t } from '../words.ts';
import { NumberField } from './fields.tsx';

interface Props {
  /** What is weighed. */
  readonly name: string;
  readonly weight: number | undefined;
  /** Of the total, 0…1; undefined where all count the same. */
  readonly share: number | undefined;
  readonly onWeight: (weight: number | undefined) => void;
}

/** What a ticket or a paper counts, and what part of the total that is. */
export function WeightField({ name, weight, share, onWeight }: Props) {
  return (
    <div class="make-weight">
      <NumberField
        label={t('builder:assign.weight')}
        of={name}
        value={weight}
        from={1}
        to={MOST_WEIGHT}
        step={1}
        otherwise={1}
        onValue={onWeight}
      />
      {share !== undefined && <span>{t('builder:assign.share', { share: percent(share) })}</span>}
    </div>
  );
}
