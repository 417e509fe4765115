/** A mouse or a finger on a page. Everything is pressed where it is drawn; a finger also measures what it presses. */
import type { CDPSession, Locator, Page } from 'playwright-core';
import { SIZES } from '../../src/stage/tokens.ts';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface Pointer {
  readonly page: Page;
  readonly touch: boolean;
  /** Presses the middle of an element, or of its label, where nothing else lies over it. */
  press(target: Locator): Promise<void>;
  /** Holds that an element could be pressed. */
  reach(target: Locator): Promise<Spot>;
  /** Presses a spot of the page, CSS pixels. */
  pressAt(spot: Spot): Promise<void>;
  /** Drags from one spot of the page to another. */
  drag(from: Spot, to: Spot): Promise<void>;
  /** Spreads two fingers about a spot to twice their distance; a mouse cannot. */
  spread?(about: Spot): Promise<void>;
  /** What a finger pressed though it was smaller than a thumb, in words. */
  readonly small: string[];
}

/** Diameters that are tried, CSS pixels: bench.md asks for 44, WCAG 2.2 (2.5.8) for 24. */
export const DIAMETERS = [SIZES.target, 38, 32, 28, 24] as const;

/** How long a finger rests before it leaves the glass, milliseconds. */
const TOUCH = 40;
/** And at the end of a drag: a finger that leaves in flight is a fling, and the browser makes no click of the tap that stops one (measured: 18 of 40). */
const STILL = 120;

interface Place extends Spot {
  readonly name: string;
  /** The largest of DIAMETERS within which every press meets the same target; 0 when none does. */
  readonly across: number;
}

/** Where an element can be pressed, and how much room there is; undefined while something lies over it. */
function placeOf(element: Element, diameters: readonly number[]): Place | undefined {
  const label = element instanceof HTMLInputElement ? element.labels?.[0] : undefined;
  const target = label ?? element;
  const middle = () => {
    const box = target.getBoundingClientRect();
    return [box.left + box.width / 2, box.top + box.height / 2] as const;
  };
  const meets = (atX: number, atY: number) => {
    const met = document.elementFromPoint(atX, atY);
    return met !== null && target.contains(met);
  };
  const round = Array.from({ length: 8 }, (_, index) => (index * Math.PI) / 4);
  const across = () => {
    const [x, y] = middle();
    if (!meets(x, y)) return -1;
    // Boxes begin between pixels and are met on whole ones.
    const wide = (diameter: number) => {
      const radius = diameter / 2 - 1.25;
      return round.every((angle) => meets(x + radius * Math.cos(angle), y + radius * Math.sin(angle)));
    };
    return diameters.find(wide) ?? 0;
  };
  // Out of sight, or half under the edge of what scrolls.
  if (across() < (diameters[0] ?? 0)) target.scrollIntoView({ block: 'center', inline: 'nearest', behavior: 'instant' });
  const room = across();
  if (room < 0) return undefined;
  const [x, y] = middle();
  const name = `${element.localName} "${(target.getAttribute('aria-label') ?? target.textContent ?? '').slice(0, 40)}"`;
  return { x, y, name, across: room };
}

async function placeIn(target: Locator): Promise<Place> {
  for (let tries = 0; tries < 40; tries += 1) {
    const place = await target.evaluate(placeOf, [...DIAMETERS]);
    if (place !== undefined) return place;
    await target.page().waitForTimeout(50);
  }
  throw new Error(`something lies over ${String(target)}`);
}

export function mouseOn(page: Page): Pointer {
  return {
    page,
    touch: false,
    small: [],
    reach: placeIn,
    press: async (target) => {
      const { x, y } = await placeIn(target);
      await page.mouse.click(x, y);
    },
    pressAt: ({ x, y }) => page.mouse.click(x, y),
    drag: async (from, to) => {
      await page.mouse.move(from.x, from.y);
      await page.mouse.down();
      await page.mouse.move(to.x, to.y, { steps: 2 });
      await page.mouse.up();
    },
  };
}

/** A finger on a page of a context with touch. */
export async function fingerOn(page: Page): Promise<Pointer> {
  const devtools: CDPSession = await page.context().newCDPSession(page);
  const small: string[] = [];
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...touchPoints: Spot[]) =>
    devtools.send('Input.dispatchTouchEvent', { type, touchPoints });
  const rest = (milliseconds: number = TOUCH) => page.waitForTimeout(milliseconds);
  const tap = async (spot: Spot) => {
    await touch('touchStart', spot);
    await rest();
    await touch('touchEnd');
  };
  const reach = async (target: Locator): Promise<Spot> => {
    const place = await placeIn(target);
    if (place.across < SIZES.target) small.push(`${place.name}: ${place.across}`);
    return place;
  };
  return {
    page,
    touch: true,
    small,
    reach,
    press: async (target) => {
      const { x, y } = await reach(target);
      await tap({ x, y });
    },
    pressAt: tap,
    drag: async (from, to) => {
      await touch('touchStart', from);
      await touch('touchMove', { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
      await touch('touchMove', to);
      await rest(STILL);
      await touch('touchEnd');
    },
    spread: async ({ x, y }) => {
      const fingers = (far: number) => [
        { x: x - far / 2, y, id: 0 },
        { x: x + far / 2, y, id: 1 },
      ];
      await touch('touchStart', ...fingers(50).slice(0, 1));
      await touch('touchStart', ...fingers(50));
      await touch('touchMove', ...fingers(100));
      await rest(STILL);
      await touch('touchEnd');
    },
  };
}
