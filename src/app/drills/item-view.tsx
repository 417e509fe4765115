import '../css/diagrams.css';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { viewOf } from '../../attempt/attempt.ts';
import type { Item } from '../../drills/item.ts';
import { laddersOf } from '../../rig/ladder.ts';
import { LadderFigure } from '../diagrams/ladder.tsx';
import { WiringFigure } from '../diagrams/wiring.tsx';
import { assembledOf } from '../library.ts';
import { drillHref } from '../router.ts';
import { pointName, readingText, t } from '../words.ts';
import { saidText, sentenceText } from './said-text.ts';
import { loadedFrom, voltsToCommon } from './scene.ts';
import { tryScene } from './try.ts';

interface Props {
  readonly item: Item;
  /** Undefined before an answer. */
  readonly chosen: number | undefined;
  readonly onChoose: (choice: number) => void;
  /** Undefined where nothing follows: a question that is looked at again. */
  readonly onNext: (() => void) | undefined;
  /** On an exam: nothing is told after the answer. */
  readonly quiet?: boolean;
}

/** One exercise: what is asked, the circuit, the choices; after the answer, why. */
export function ItemView({ item, chosen, onChoose, onNext, quiet = false }: Props) {
  const stood = useMemo(() => loadedFrom(item.scene), [item]);
  const heading = useRef<HTMLHeadingElement>(null);
  const told = useRef<HTMLDivElement>(null);
  const isAgain = onNext === undefined;
  useEffect(() => {
    if (!isAgain) heading.current?.focus();
  }, [item, isAgain]);
  useEffect(() => {
    if (chosen !== undefined && !isAgain) told.current?.focus();
  }, [chosen, isAgain]);
  useEffect(() => {
    const press = ({ key, ctrlKey, altKey, metaKey }: KeyboardEvent) => {
      if (ctrlKey || altKey || metaKey) return;
      const place = Number(key) - 1;
      if ((chosen === undefined || quiet) && place >= 0 && place < item.choices.length) onChoose(place);
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [item, chosen, onChoose, quiet]);
  if (stood === undefined) return null;
  const { attempt } = stood.loaded;
  const view = viewOf(attempt);
  const words = (part: 'ask' | 'given' | 'why') => (sentence: Item['ask']) => sentenceText(view, item.kind, part, sentence);
  const isTold = chosen !== undefined && !quiet;
  const wrong = chosen === undefined ? undefined : item.choices[chosen]?.misconception;
  return (
    <article class="slip drill" aria-labelledby="drill-title">
      <h2 id="drill-title" tabIndex={-1} ref={heading}>
        {t(`drill:kind.${item.kind}.name`)}
      </h2>
      <p class="drill-where">{t(`rig:name.${item.scene.rig}`)}</p>
      <p class="drill-ask">{words('ask')(item.ask)}</p>
      {item.given.length > 0 && (
        <ul class="drill-given">
          {item.given.map(words('given')).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      <ol class="drill-choices">
        {item.choices.map((choice, place) => {
          const isRight = place === item.right;
          const mark = !isTold ? '' : isRight ? 'right' : place === chosen ? 'wrong' : '';
          return (
            <li key={saidText(view, choice.said)}>
              <button
                type="button"
                class="button drill-choice"
                data-mark={mark}
                aria-pressed={place === chosen}
                disabled={isTold && mark === ''}
                onClick={() => onChoose(place)}
              >
                <span class="drill-key" aria-hidden="true">
                  {place + 1}
                </span>
                <span>{saidText(view, choice.said)}</span>
                {mark !== '' && <b>{t(mark === 'right' ? 'drill:page.isRight' : 'drill:page.wrong')}</b>}
              </button>
            </li>
          );
        })}
      </ol>
      {isTold && (
        <div class="drill-why" tabIndex={-1} ref={told} role="status">
          <p>
            <b>{t(chosen === item.right ? 'drill:page.wasRight' : 'drill:page.wasWrong')}</b>
            {wrong !== undefined && ` ${t(`drill:misconception.${wrong}`)}`}
          </p>
          {item.why.map(words('why')).map((line) => (
            <p key={line}>{line}</p>
          ))}
          <div class="drill-do">
            {onNext !== undefined && (
              <button type="button" class="button act" onClick={onNext}>
                {t('drill:page.next')}
              </button>
            )}
            <a class="button" href={drillHref} onClick={() => tryScene(item.scene)}>
              {t('drill:page.onBench')}
            </a>
          </div>
        </div>
      )}
      <Picture item={item} place={view.place} />
      {isTold && (
        <details class="light-codes">
          <summary>{t('drill:page.volts')}</summary>
          <ul class="drill-volts">
            {voltsToCommon(
              attempt,
              view.parts
                .filter(({ visible }) => visible)
                .flatMap(({ terminals }) => terminals.filter(({ reachable }) => reachable).map(({ point }) => point)),
            ).map(({ point, shown }) => (
              <li key={point}>
                <span>{pointName(view, point)}</span> <b>{readingText(shown)}</b>
              </li>
            ))}
          </ul>
        </details>
      )}
    </article>
  );
}

/** The circuit as its maker printed it, with the points in question marked: the ladder for who reads ladders, else the place where one stands. */
function Picture({ item, place }: { readonly item: Item; readonly place: string }) {
  const stood = useMemo(() => loadedFrom(item.scene), [item]);
  if (stood === undefined) return null;
  const assembly = assembledOf(stood.rig);
  if (item.skill === 'diagrams')
    return (
      <div class="diagrams">
        {laddersOf(assembly).map((ladder) => (
          <LadderFigure key={`${ladder.hot} ${ladder.common} ${ladder.feed.steps[0]?.part}`} assembly={assembly} ladder={ladder} />
        ))}
      </div>
    );
  if (!assembly.parts.some(({ data }) => data.place === place)) return null;
  return (
    <div class="diagrams">
      <WiringFigure assembly={assembly} place={place} marked={item.marked} />
    </div>
  );
}
