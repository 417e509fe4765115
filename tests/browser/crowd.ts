import type { Page } from 'playwright-core';

/**
 * Controls that lie on another control or on words that are not their own, that stick out of the screen at a side, or that are
 * smaller than a fingertip may be (WCAG 2.2, 2.5.8: 24 CSS pixels, but for links within a sentence), as a sentence each.
 */
export function crowdedControls(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const SLACK = 2;
    const LEAST = 24;
    const CONTROLS = 'a[href], button, select, input, summary, textarea, [role=option]';
    const found: string[] = [];
    interface Box {
      readonly left: number;
      readonly top: number;
      readonly right: number;
      readonly bottom: number;
    }
    /** Asked of an element's parent again and again: answered once. */
    const once = <T>(ask: (element: Element) => T) => {
      const known = new Map<Element, T>();
      return (element: Element): T => {
        if (!known.has(element)) known.set(element, ask(element));
        return known.get(element) as T;
      };
    };
    const style = once((element) => getComputedStyle(element));
    const name = (element: Element) =>
      `${element.localName}.${element.getAttribute('class') ?? ''} "${(element.getAttribute('aria-label') ?? element.textContent ?? '').trim().slice(0, 40)}"`;
    const shown = (element: Element) => element.checkVisibility({ visibilityProperty: true, opacityProperty: true });
    /** What lies over the page on purpose, and goes: windows, what stays while it scrolls, the picker of a terminal. */
    const layerOf: (element: Element) => Element | null = once((element) => {
      if (element.matches('dialog, .picker') || ['fixed', 'sticky'].includes(style(element).position)) return element;
      return element.parentElement && layerOf(element.parentElement);
    });
    /** Words that only a screen reader reads lie in a box of a pixel. */
    const aside: (element: Element) => boolean = once((element) => {
      const box = element.getBoundingClientRect();
      if (box.width <= 1 || box.height <= 1 || style(element).clipPath.startsWith('inset(50')) return true;
      return element.parentElement !== null && aside(element.parentElement);
    });
    const scrolls = (element: Element) =>
      ['auto', 'scroll', 'hidden', 'clip'].some((each) => style(element).overflowX === each || style(element).overflowY === each);
    /** What is left of a box inside everything that scrolls or hides around it. */
    const seen = (of: Element, box: Box): Box | undefined => {
      let { left, top, right, bottom } = box;
      for (let each: Element | null = of.parentElement; each; each = each.parentElement) {
        if (!scrolls(each) || each === document.documentElement || each === document.body) continue;
        const around = each.getBoundingClientRect();
        left = Math.max(left, around.left);
        right = Math.min(right, around.right);
        top = Math.max(top, around.top);
        bottom = Math.min(bottom, around.bottom);
      }
      return right - left > 1 && bottom - top > 1 ? { left, top, right, bottom } : undefined;
    };
    const meets = (one: Box, other: Box): boolean =>
      Math.min(one.right, other.right) - Math.max(one.left, other.left) > SLACK &&
      Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > SLACK;

    const dialog = document.querySelector('dialog[open]');
    const root = dialog ?? document.body;
    const controls: { readonly of: Element; readonly layer: Element | null; readonly box: Box }[] = [];
    for (const control of root.querySelectorAll(CONTROLS)) {
      // The words of a box or a button to tick are pressed as it is; those of a field stand beside it.
      const ticked = control instanceof HTMLInputElement && ['checkbox', 'radio', 'file'].includes(control.type);
      const label = ticked ? control.labels?.[0] : undefined;
      const of = label ?? control;
      if (!shown(control)) continue;
      const whole = of.getBoundingClientRect();
      if (aside(of)) continue;
      const inSentence = control.localName === 'a' && style(control).display === 'inline' && control.querySelector('span') === null;
      if (!inSentence && (whole.width < LEAST - 0.5 || whole.height < LEAST - 0.5))
        found.push(`too small to press, ${Math.round(whole.width)} by ${Math.round(whole.height)}: ${name(of)}`);
      const box = seen(of, whole);
      if (box === undefined) continue;
      if (box.left < -SLACK || box.right > innerWidth + SLACK) found.push(`sticks out of the screen: ${name(of)}`);
      controls.push({ of, layer: layerOf(of), box });
    }
    controls.forEach((one, index) => {
      for (const other of controls.slice(index + 1)) {
        if (one.layer !== other.layer || one.of.contains(other.of) || other.of.contains(one.of)) continue;
        if (meets(one.box, other.box)) found.push(`one control on another: ${name(one.of)} and ${name(other.of)}`);
      }
    });
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const of = node.parentElement;
      if (!of || !node.textContent?.trim() || ['OPTION', 'SCRIPT', 'STYLE'].includes(of.tagName) || !shown(of)) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const layer = layerOf(of);
      for (const line of range.getClientRects()) {
        const box = line.width > 1 && line.height > 1 ? seen(of, line) : undefined;
        if (box === undefined || aside(of)) continue;
        // Letters fill the middle of their line.
        const quarter = (box.bottom - box.top) / 4;
        const letters = { ...box, top: box.top + quarter, bottom: box.bottom - quarter };
        for (const control of controls) {
          if (control.layer !== layer || !meets(letters, control.box)) continue;
          if (!control.of.contains(of) && !of.contains(control.of))
            found.push(`a control on words: ${name(control.of)} and "${node.textContent.trim().slice(0, 40)}"`);
        }
      }
    }
    return [...new Set(found)];
  });
}
