import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import '../css/window.css';
import { t } from '../words.ts';

interface Props {
  readonly title: string;
  readonly onDone: () => void;
  readonly children: ComponentChildren;
}

/** A modal window over the page: the browser's own, with its focus and Escape. */
export function Dialog({ title, onDone, children }: Props) {
  const element = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    element.current?.showModal();
  }, []);
  return (
    <dialog ref={element} class="window" aria-labelledby="window-title" onClose={onDone}>
      <div class="window-head">
        <h2 id="window-title">{title}</h2>
        <button type="button" class="button" onClick={() => element.current?.close()}>
          {t('app:back')}
        </button>
      </div>
      {children}
    </dialog>
  );
}
