import i18next from 'i18next';
import { useState } from 'preact/hooks';
import type { Assignment } from '../../classroom/assignment.ts';
import { PACKAGE_KINDS, type PackageKind } from '../../classroom/lms/manifests.ts';
import { t } from '../words.ts';
import { whyNot } from './error-text.ts';
import { NumberField, SelectField } from './fields.tsx';
import { canPack, makePackage } from './package.ts';
import { save } from './save.ts';

interface Said {
  /** What it was said of: it holds for nothing else. */
  readonly of: Assignment;
  readonly words: string;
}

/** Packs the assignment and the app for the school's learning system. */
export function PackageMaker({ assignment }: { readonly assignment: Assignment | undefined }) {
  const [kind, setKind] = useState<PackageKind>('scorm12');
  const [passAt, setPassAt] = useState<number>();
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState<Said>();
  const make = async (of: Assignment) => {
    setBusy(true);
    setSaid({ of, words: t('builder:package.busy') });
    try {
      const name = `${of.id}-${kind}.zip`;
      save(await makePackage(kind, of, i18next.language, passAt), name);
      setSaid({ of, words: t('builder:package.made', { file: name }) });
    } catch (error) {
      setSaid({ of, words: whyNot(error) });
    } finally {
      setBusy(false);
    }
  };
  return (
    <section class="make-package" aria-labelledby="package-title">
      <h3 id="package-title">{t('builder:package.title')}</h3>
      {canPack ? (
        <>
          <div class="make-row">
            <SelectField
              label={t('builder:package.kind')}
              value={kind}
              options={PACKAGE_KINDS.map((each) => [each, t(`builder:package.of.${each}`)] as const)}
              onValue={setKind}
            />
            <NumberField
              label={t('builder:package.pass')}
              value={passAt}
              from={0}
              to={100}
              step={1}
              otherwise={t('builder:package.noPass')}
              onValue={(points) => setPassAt(points === undefined ? undefined : Math.min(100, Math.max(0, points)))}
            />
          </div>
          <div class="make-buttons">
            <button
              type="button"
              class="button"
              disabled={assignment === undefined || busy}
              onClick={() => assignment && void make(assignment)}
            >
              {t('builder:package.make')}
            </button>
          </div>
          <p role="status" data-testid="package-said">
            {said !== undefined && said.of === assignment ? said.words : ''}
          </p>
        </>
      ) : (
        <p>{t('builder:package.fromDisk')}</p>
      )}
    </section>
  );
}
