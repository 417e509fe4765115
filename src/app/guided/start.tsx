import { useEffect, useState } from 'preact/hooks';
import '../css/guided-ends.css';
import { hrefOf } from '../router.ts';
import { hasBegun } from '../storage.ts';
import { t } from '../words.ts';
import { keepGuided } from './choice.ts';
import { GUIDED_TICKET } from './facts.ts';

interface Props {
  /** Whether nothing else is to be done before it. */
  readonly isFirst: boolean;
}

/** The way into the guided ticket: the one thing to do for whoever has done nothing yet, and there for everybody else. */
export function GuidedStart({ isFirst }: Props) {
  const [newcomer, setNewcomer] = useState(false);
  useEffect(() => {
    let current = true;
    void hasBegun().then((begun) => current && setNewcomer(!begun));
    return () => {
      current = false;
    };
  }, []);
  const isOffered = newcomer && isFirst;
  return (
    <div class="guided-start">
      <a class={isOffered ? 'button act' : 'button'} href={hrefOf('bench', GUIDED_TICKET)} onClick={() => keepGuided(true)}>
        {t(isOffered ? 'guided:start.first' : 'guided:start.again')}
      </a>
      <p>{t('guided:start.what')}</p>
    </div>
  );
}
