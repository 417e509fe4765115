import { useEffect } from 'preact/hooks';

/**
 * On paper nothing can be unfolded: every fold of the page opens before it is printed, and closes again after. Folds whose content is
 * first worked out when a hand opens them (`data-lazy`) stay as they are.
 */
export function useOpenFolds(): void {
  useEffect(() => {
    let opened: HTMLDetailsElement[] = [];
    const open = () => {
      opened = [...document.querySelectorAll<HTMLDetailsElement>('main details:not([open])')].filter(
        (fold) => fold.closest('[data-lazy]') === null,
      );
      for (const fold of opened) fold.open = true;
    };
    const shut = () => {
      for (const fold of opened) fold.open = false;
      opened = [];
    };
    addEventListener('beforeprint', open);
    addEventListener('afterprint', shut);
    return () => {
      removeEventListener('beforeprint', open);
      removeEventListener('afterprint', shut);
    };
  }, []);
}
