import type { Page } from 'playwright-core';

/**
 * Texts that are cut off by their box, stick out of their button, or lie on another text, as a sentence each; empty when every word can
 * be read. What can be scrolled to is not cut.
 */
export function cutTexts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const SLACK = 1.5;
    const found: string[] = [];
    const name = (element: Element) =>
      `${element.localName}.${element.getAttribute('class') ?? ''} "${element.textContent?.slice(0, 60)}"`;
    const style = (element: Element) => getComputedStyle(element);
    const shown = (element: Element) => element.checkVisibility({ visibilityProperty: true, opacityProperty: true });
    /** Words that only a screen reader reads lie in a box of a pixel. */
    const aside = (element: Element): boolean => {
      for (let each: Element | null = element; each; each = each.parentElement) {
        const box = each.getBoundingClientRect();
        if (box.width <= 1 || box.height <= 1 || style(each).clipPath.startsWith('inset(50')) return true;
      }
      return false;
    };
    for (const element of document.body.querySelectorAll<HTMLElement>('*')) {
      if (!(element instanceof HTMLElement) || !element.textContent?.trim() || !shown(element) || aside(element)) continue;
      const { overflowX, overflowY } = style(element);
      const hides = (value: string) => value === 'hidden' || value === 'clip';
      if (hides(overflowX) && element.scrollWidth > element.clientWidth + SLACK) found.push(`cut at the side: ${name(element)}`);
      if (hides(overflowY) && element.scrollHeight > element.clientHeight + SLACK) found.push(`cut below: ${name(element)}`);
    }
    interface Line {
      readonly of: Element;
      readonly layer: Element | null;
      readonly left: number;
      readonly top: number;
      readonly right: number;
      readonly bottom: number;
    }
    /** What lies above the page or stays while it scrolls may cover text: it moves away. */
    const layerOf = (element: Element): Element | null => {
      for (let each: Element | null = element; each; each = each.parentElement) {
        if (each.localName === 'dialog' || ['fixed', 'sticky'].includes(style(each).position)) return each;
      }
      return null;
    };
    const lines: Line[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const of = node.parentElement;
      if (!of || !node.textContent?.trim() || ['OPTION', 'SCRIPT', 'STYLE'].includes(of.tagName) || !shown(of) || aside(of))
        continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const holder = of.closest('button, .button, [role=button]')?.getBoundingClientRect();
      for (const rect of range.getClientRects()) {
        if (
          holder &&
          (rect.left < holder.left - SLACK || rect.right > holder.right + SLACK || rect.bottom > holder.bottom + SLACK * 2)
        )
          found.push(`sticks out of its button: ${name(of)}`);
        let { left, top, right, bottom } = rect;
        for (let each: Element | null = of; each; each = each.parentElement) {
          if (style(each).overflowY === 'visible') continue;
          const box = each.getBoundingClientRect();
          [left, top, right, bottom] = [
            Math.max(left, box.left),
            Math.max(top, box.top),
            Math.min(right, box.right),
            Math.min(bottom, box.bottom),
          ];
        }
        if (right - left > 1 && bottom - top > 1) lines.push({ of, layer: layerOf(of), left, top, right, bottom });
      }
    }
    lines.forEach((one, index) => {
      for (const other of lines.slice(index + 1)) {
        if (one.of === other.of || one.layer !== other.layer) continue;
        const wide = Math.min(one.right, other.right) - Math.max(one.left, other.left);
        const high = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
        // Boxes of neighbouring lines touch by a few pixels; letters do from a third of a line on.
        if (wide > 2 && high > Math.min(one.bottom - one.top, other.bottom - other.top) / 3)
          found.push(`overlap: ${name(one.of)} and ${name(other.of)}`);
      }
    });
    if (document.documentElement.scrollWidth > innerWidth) found.push(`the page is ${document.documentElement.scrollWidth} wide`);
    return [...new Set(found)];
  });
}
