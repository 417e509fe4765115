import { COLOURS, FAMILIES, SIZES, WIRE } from '../stage/tokens.ts';

/**
 * Sets the look's tokens as CSS variables: `--paper`, `--wire-red`, `--font-text`, `--size-target` and so on.
 * @param instead colours in place of those of their names
 */
export function applyTokens(root: HTMLElement, instead: Readonly<Record<string, string>> = {}): void {
  const kebab = (name: string) => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  const put = (prefix: string, entries: Readonly<Record<string, string>>) => {
    for (const [name, value] of Object.entries(entries)) root.style.setProperty(`--${prefix}${kebab(name)}`, value);
  };
  put('', { ...COLOURS, ...instead });
  put('wire-', WIRE);
  put('font-', FAMILIES);
  put('size-', Object.fromEntries(Object.entries(SIZES).map(([name, pixels]) => [name, `${pixels / 16}rem`])));
}
