import { useEffect, useMemo, useRef } from 'preact/hooks';
import { viewOf } from '../../attempt/attempt.ts';
import type { Item } from '../../drills/item.ts';
import { drillHref } from '../router.ts';
import { t } from '../words.ts';
import { Choices } from './choices.tsx';
import { Now } from './now.tsx';
import { perceivedIn } from './perceived.ts';
import { Picture } from './picture.tsx';
import { letteredView, sentenceText } from './said-text.ts';
import { loadedFrom } from './scene.ts';
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

/** One exercise: what is asked, the circuit, the choices; after the answer, why, and the circuit with what the meter shows. */
export function ItemView({ item, chosen, onChoose, onNext, quiet = false }: Props) {
  const stood = useMemo(() => {
    const found = loadedFrom(item.scene);
    if (found === undefined) return undefined;
    const { attempt } = found.loaded;
    return { attempt, view: letteredView(viewOf(attempt)), rig: found.rig, perceived: perceivedIn(item.given) };
  }, [item]);
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
  const { view } = stood;
  const words = (part: 'ask' | 'given' | 'why') => (sentence: Item['ask']) => sentenceText(view, item.kind, part, sentence);
  // What is seen now stands in a list of its own.
  const given = item.given.filter(({ key }) => key !== 'now');
  const isTold = chosen !== undefined && !quiet;
  // Looked at again, a question may have been left without an answer: then none of the choices is the chosen one.
  const verdict = chosen === item.right ? 'wasRight' : item.choices[chosen ?? -1] === undefined ? 'wasOpen' : 'wasWrong';
  const wrong = chosen === undefined ? undefined : item.choices[chosen]?.misconception;
  return (
    <article class="slip drill" aria-labelledby="drill-title">
      <div class="drill-columns">
        <div class="drill-question">
          <header>
            <p class="drill-where">{t(`rig:name.${item.scene.rig}`)}</p>
            <h2 id="drill-title" tabIndex={-1} ref={heading}>
              {t(`drill:kind.${item.kind}.name`)}
            </h2>
          </header>
          <p class="drill-ask">{words('ask')(item.ask)}</p>
          {given.length > 0 && (
            <ul class="drill-given">
              {given.map(words('given')).map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          )}
          {stood.perceived.length > 0 && <Now perceived={stood.perceived} rig={stood.rig} place={view.place} />}
          <Choices item={item} view={view} chosen={chosen} told={isTold} onChoose={onChoose} />
          {isTold && (
            <div class="drill-why" data-right={String(chosen === item.right)} tabIndex={-1} ref={told} role="status">
              <p class="drill-verdict">{t(`drill:page.${verdict}`)}</p>
              {wrong !== undefined && <p>{t(`drill:misconception.${wrong}`)}</p>}
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
        </div>
        <Picture item={item} {...stood} told={isTold} />
      </div>
    </article>
  );
}
