import { useEffect, useRef, useState } from 'preact/hooks';
import type { AssignmentItem } from '../../classroom/assignment.ts';
import { GRADES, type Grade } from '../../scenario/grade.ts';
import { SKILLS, type Skill } from '../../scenario/skills.ts';
import { engineAlone, leaveMaking } from '../engine/engine.ts';
import { rigs } from '../library.ts';
import { number, t } from '../words.ts';
import { randomSeed } from './assignment-draft.ts';
import { whyNot } from './error-text.ts';
import { NumberField, SelectField } from './fields.tsx';
import { drawPool, type PoolProgress } from './pool.ts';

const LEAST = 2;
const MOST = 40;
const USUAL = 6;

/** A recipe, and the drawing of its pool: it can be stopped, and what is there by then is taken. */
export function PoolMaker({ onPool }: { readonly onPool: (item: AssignmentItem) => void }) {
  const [rig, setRig] = useState([...rigs.keys()][0] ?? '');
  const [skill, setSkill] = useState<Skill | ''>('');
  const [grade, setGrade] = useState<Grade | ''>('');
  const [count, setCount] = useState(USUAL);
  const [progress, setProgress] = useState<PoolProgress>();
  const [said, setSaid] = useState('');
  const stopped = useRef(false);
  const latest = useRef(onPool);
  latest.current = onPool;
  const stop = () => {
    stopped.current = true;
    leaveMaking();
  };
  useEffect(() => stop, []);
  const draw = async (plain: NonNullable<ReturnType<typeof rigs.get>>) => {
    const recipe = { rig, ...(skill === '' ? {} : { skill }), ...(grade === '' ? {} : { grade }) };
    const lot = { ...recipe, seed: randomSeed() % 1_000_000 };
    stopped.current = false;
    setSaid('');
    setProgress({ draws: 0, made: 0, alike: 0 });
    try {
      const next = () => engineAlone().ask('draw', { recipe: lot, rig: plain });
      const pool = await drawPool(next, count, () => stopped.current, setProgress);
      if (pool.length < LEAST) setSaid(t('builder:assign.tooFew'));
      else {
        latest.current({ kind: 'drawn', recipe, pool });
        setSaid(t(pool.length < count ? 'builder:assign.drawnFewer' : 'builder:assign.drawn', { pool: number(pool.length) }));
      }
    } catch (error) {
      setSaid(whyNot(error));
    }
    setProgress(undefined);
  };
  const plain = rigs.get(rig);
  return (
    <div class="make-pool">
      <p>{t('builder:assign.eachOwnText')}</p>
      <div class="make-row">
        <SelectField
          label={t('builder:rig.title')}
          value={rig}
          options={[...rigs.keys()].map((id) => [id, t(`rig:name.${id}`)] as const)}
          onValue={setRig}
        />
        <SelectField
          label={t('builder:assign.skill')}
          value={skill}
          none={t('builder:assign.anySkill')}
          options={SKILLS.map((each) => [each, t(`keeping:skill.${each}`)] as const)}
          onValue={setSkill}
        />
        <SelectField
          label={t('builder:result.grade')}
          value={grade}
          none={t('builder:assign.anyGrade')}
          options={GRADES.map((each) => [each, t(`app:grade.${each}`)] as const)}
          onValue={setGrade}
        />
        <NumberField
          label={t('builder:assign.count')}
          value={count}
          from={LEAST}
          to={MOST}
          step={1}
          onValue={(value) => setCount(Math.min(MOST, Math.max(LEAST, Math.round(value ?? USUAL))))}
        />
      </div>
      <div class="make-buttons">
        {progress === undefined ? (
          <button type="button" class="button" disabled={plain === undefined} onClick={() => plain && void draw(plain)}>
            {t('builder:assign.draw')}
          </button>
        ) : (
          <button type="button" class="button" onClick={stop}>
            {t('builder:assign.stop')}
          </button>
        )}
      </div>
      {progress !== undefined && (
        <div class="make-progress">
          <progress aria-label={t('builder:assign.draw')} value={progress.alike} max={count} />
          <span>
            {t('builder:assign.progress', {
              draws: number(progress.draws),
              made: number(progress.made),
              alike: number(progress.alike),
              wanted: number(count),
            })}
          </span>
        </div>
      )}
      <p role="status" data-testid="pool-said">
        {progress === undefined ? said : ''}
      </p>
    </div>
  );
}
