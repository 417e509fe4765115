import type { ComponentChildren } from 'preact';
import type { Action } from '../../attempt/actions.ts';
import { useMarks } from '../guided/marks.ts';
import { hrefOf } from '../router.ts';
import { Brand, BrandStill } from '../shell.tsx';
import { siteOf, titleOf } from '../ticket-words.ts';
import type { Bench } from '../use-attempt.ts';
import { clock, number, t } from '../words.ts';
import type { BenchKind } from './kinds.ts';

interface Props {
  readonly bench: Bench;
  readonly kind: BenchKind;
  readonly onKind: (kind: BenchKind) => void;
  readonly onMenu: () => void;
  readonly onTicket: () => void;
  readonly onName: () => void;
  /** Beside the other counts, where a host has more to tell. */
  readonly count?: ComponentChildren;
  /** A free bench that is no debrief's: what it is called, and where it leads back to. */
  readonly free?: FreeBench | undefined;
}

export interface FreeBench {
  readonly title: string;
  readonly line: string;
  readonly back: string;
  readonly href: string;
}

/** Which job, how long it has taken, which bench, and what ends it. */
export function BenchHead({ bench, kind, onKind, onMenu, onTicket, onName, count, free }: Props) {
  const { view, ticket } = bench;
  const marks = useMarks();
  const title = titleOf(ticket.id, ticket.told);
  const heading = free?.title ?? (bench.free ? t('app:live.title') : title);
  // One orange thing at a time: while the guide marks another, the button that ends the job is plain.
  const elsewhere = (name: Action['name']) => marks.next !== undefined && marks.next.name !== name;
  const repaired = view.steps.some((step) => step.action.name === 'replace');
  return (
    <header class="bench-head">
      {bench.whole === undefined ? <BrandStill /> : <Brand />}
      <button type="button" class="button" onClick={onMenu}>
        {t('settings:menu.title')}
      </button>
      <div class="bench-title">
        <h1 tabIndex={-1} title={heading}>
          {heading}
        </h1>
        <p>
          {bench.free
            ? (free?.line ?? t('app:live.line', { title }))
            : t('app:head.line', { site: siteOf(ticket.id, ticket.told), mode: t(`app:mode.${ticket.mode}`) })}
        </p>
      </div>
      <dl class="bench-counts">
        <div>
          <dt>{t('app:head.onTheJob')}</dt>
          <dd data-testid="clock">{clock(view.seconds)}</dd>
        </div>
        <div>
          <dt>{t('app:head.steps')}</dt>
          <dd data-testid="steps">{number(view.steps.length)}</dd>
        </div>
        {count}
      </dl>
      <fieldset class="switch" aria-label={t('app:head.bench')}>
        {(['drawn', 'list'] as const).map((each) => (
          <button key={each} type="button" aria-pressed={kind === each} onClick={() => onKind(each)}>
            {t(`app:head.kind.${each}`)}
          </button>
        ))}
      </fieldset>
      <button type="button" class="button" onClick={onTicket}>
        {t('app:head.ticket')}
      </button>
      {bench.free ? (
        <a class="button act" href={free?.href ?? hrefOf('debrief', ticket.id)}>
          {free?.back ?? t('app:live.back')}
        </a>
      ) : view.phase === 'working' ? (
        <button
          key="name"
          type="button"
          class={elsewhere('name') ? 'button' : 'button act'}
          data-marked={marks.next?.name === 'name' || undefined}
          onClick={onName}
        >
          {t('app:head.name')}
        </button>
      ) : (
        <button
          key="close"
          type="button"
          class={repaired && !elsewhere('close') ? 'button act' : 'button'}
          data-marked={marks.does({ name: 'close' })}
          onClick={() => bench.act({ name: 'close' })}
        >
          {t('app:head.close')}
        </button>
      )}
    </header>
  );
}
