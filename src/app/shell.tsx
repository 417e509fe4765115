import i18next from 'i18next';
import { type ComponentChildren, toChildArray } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { chooseLanguage, languages } from './language.ts';
import { hrefOf, jobHref } from './router.ts';
import { t } from './words.ts';

/** Our own mark: a length of bell wire between a red and a white end. */
export function Mark() {
  return (
    <svg class="mark" viewBox="0 0 32 24" aria-hidden="true" focusable="false">
      <path d="M5 18 C5 0 16 2 16 10 S27 22 27 17" />
      <circle class="mark-red" cx="5" cy="18" r="3.4" />
      <circle class="mark-white" cx="27" cy="17" r="3.4" />
    </svg>
  );
}

export function Brand() {
  return (
    <a class="brand" href={hrefOf('home')}>
      <Mark />
      <span>{t('app:name')}</span>
    </a>
  );
}

/** The same where it leads nowhere, because leaving ends something. */
export function BrandStill() {
  return (
    <span class="brand">
      <Mark />
      <span>{t('app:name')}</span>
    </span>
  );
}

/** Header of a page from which one goes back to the tickets. */
export function BackHead() {
  return (
    <PageHead>
      <a class="back" href={hrefOf('home')}>
        {t('app:toTickets')}
      </a>
    </PageHead>
  );
}

interface HeadProps {
  readonly children?: ComponentChildren;
  /** Whether the language is chosen here. */
  readonly language?: boolean;
}

/** Header of the reading pages. */
export function PageHead({ children, language = true }: HeadProps) {
  const job = jobHref();
  return (
    <header class="page-head">
      <Brand />
      {job !== undefined && (
        <a class="back" href={job}>
          {t('settings:job')}
        </a>
      )}
      {toChildArray(children).length > 1 ? <HeadMenu>{children}</HeadMenu> : children}
      {language && <LanguageChoice />}
    </header>
  );
}

/** Several places that a page leads to, beside the job: a narrow screen shows them when they are asked for. */
function HeadMenu({ children }: { readonly children: ComponentChildren }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button
        type="button"
        class="button small head-menu"
        aria-expanded={isOpen}
        aria-controls="head-links"
        onClick={() => setOpen(!isOpen)}
      >
        {t('settings:menu.title')}
      </button>
      <nav id="head-links" class="head-links" aria-label={t('settings:menu.title')} data-open={isOpen}>
        {children}
      </nav>
    </>
  );
}

/** Set while the page is put up anew in another language: the focus goes back to the choice that it was on. */
let choosing = false;

/** Each language under its own name, so that whoever cannot read this page finds theirs. */
export function LanguageChoice() {
  const element = useRef<HTMLSelectElement>(null);
  useEffect(() => {
    if (choosing) element.current?.focus();
    choosing = false;
  }, []);
  return (
    <select
      ref={element}
      class="language-choice"
      aria-label={t('app:language')}
      value={i18next.language}
      onChange={(event) => {
        choosing = true;
        void chooseLanguage(event.currentTarget.value);
      }}
    >
      {languages.map(({ id, ownName }) => (
        <option key={id} value={id} lang={id}>
          {ownName}
        </option>
      ))}
    </select>
  );
}

/** Sets the window's title while a page is up. */
export function useTitle(title: string): void {
  useEffect(() => {
    document.title = `${title} · ${t('app:name')}`;
  }, [title]);
}

/** The standing cautions: what a trainee must know before touching a real cabinet. */
export function Cautions() {
  return (
    <aside class="cautions" aria-labelledby="cautions-title">
      <h2 id="cautions-title">{t('app:cautions.title')}</h2>
      <p>{t('app:cautions.aid')}</p>
      <p>{t('app:cautions.cabinets')}</p>
      <p>{t('app:cautions.follow')}</p>
    </aside>
  );
}
