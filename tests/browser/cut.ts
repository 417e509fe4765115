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
    /** Asked of an element's parent again and again: answered once. */
    const once = <T>(ask: (element: Element) => T) => {
      const known = new Map<Element, T>();
      return (element: Element): T => {
        if (!known.has(element)) known.set(element, ask(element));
        return known.get(element) as T;
      };
    };
    const style = once((element) => getComputedStyle(element));
    const shown = (element: Element) => element.checkVisibility({ visibilityProperty: true, opacityProperty: true });
    /** Words that only a screen reader reads lie in a box of a pixel. */
    const aside: (element: Element) => boolean = once((element) => {
      const box = element.getBoundingClientRect();
      if (box.width <= 1 || box.height <= 1 || style(element).clipPath.startsWith('inset(50')) return true;
      return element.parentElement !== null && aside(element.parentElement);
    });
    for (const element of document.body.querySelectorAll<HTMLElement>('*')) {
      if (!(element instanceof HTMLElement) || !element.textContent?.trim() || !shown(element) || aside(element)) continue;
      const { overflowX, overflowY } = style(element);
      // Words that end in three points say themselves whole when pointed at.
      if (style(element).textOverflow === 'ellipsis' && element.title === element.textContent.replace(/:$/, '')) continue;
      const hides = (value: string) => value === 'hidden' || value === 'clip';
      if (hides(overflowX) && element.scrollWidth > element.clientWidth + SLACK) found.push(`cut at the side: ${name(element)}`);
      if (hides(overflowY) && element.scrollHeight > element.clientHeight + SLACK) found.push(`cut below: ${name(element)}`);
    }
    interface Line {
      readonly of: Element;
      readonly layer: Element | null;
      /** How it is turned, degrees. */
      readonly turn: number;
      readonly left: number;
      readonly top: number;
      readonly right: number;
      readonly bottom: number;
    }
    /** What lies above the page or stays while it scrolls may cover text: it moves away. */
    const layerOf: (element: Element) => Element | null = once((element) => {
      if (element.matches('dialog, .picker') || ['fixed', 'sticky'].includes(style(element).position)) return element;
      return element.parentElement && layerOf(element.parentElement);
    });
    const lines: Line[] = [];
    /** A line of a drawing that is turned, as it lies to a reader who holds the page turned; else nothing. */
    const turned = (of: Element): Line | undefined => {
      const matrix = of instanceof SVGTextElement ? of.getScreenCTM() : null;
      if (!(of instanceof SVGTextElement) || matrix === null || Math.abs(matrix.b) < 0.01) return undefined;
      const { x, y, width, height } = of.getBBox();
      const scale = Math.hypot(matrix.a, matrix.b);
      const turn = Math.atan2(matrix.b, matrix.a);
      const at = new DOMPoint(x, y).matrixTransform(matrix);
      const left = at.x * Math.cos(turn) + at.y * Math.sin(turn);
      const top = at.y * Math.cos(turn) - at.x * Math.sin(turn);
      return { of, layer: layerOf(of), turn, left, top, right: left + width * scale, bottom: top + height * scale };
    };
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const of = node.parentElement;
      if (!of || !node.textContent?.trim() || ['OPTION', 'SCRIPT', 'STYLE'].includes(of.tagName) || !shown(of) || aside(of))
        continue;
      const slanting = turned(of);
      if (slanting !== undefined) {
        lines.push(slanting);
        continue;
      }
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
        if (right - left > 1 && bottom - top > 1) lines.push({ of, layer: layerOf(of), turn: 0, left, top, right, bottom });
      }
    }
    lines.forEach((one, index) => {
      for (const other of lines.slice(index + 1)) {
        // Turned words are compared with those that are turned alike: the boxes of others tell nothing about letters.
        if (one.of === other.of || one.layer !== other.layer || Math.abs(one.turn - other.turn) > 0.01) continue;
        const wide = Math.min(one.right, other.right) - Math.max(one.left, other.left);
        const high = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
        // Boxes of neighbouring lines touch by a few pixels; letters do from a third of a line on.
        if (wide > 2 && high > Math.min(one.bottom - one.top, other.bottom - other.top) / 3)
          found.push(`overlap: ${name(one.of)} and ${name(other.of)}`);
      }
    });
    if (document.documentElement.scrollWidth > innerWidth) {
      const wide = [...document.body.querySelectorAll('*')].filter(
        (each) => shown(each) && each.getBoundingClientRect().right > innerWidth + 1,
      );
      found.push(`the page is ${document.documentElement.scrollWidth} wide: ${wide.slice(-3).map(name).join(', ')}`);
    }
    return [...new Set(found)];
  });
}
