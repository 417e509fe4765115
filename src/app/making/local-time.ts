/** An instructor gives a time by the clock on the wall; what is kept is the moment in UTC. */

const two = (value: number): string => String(value).padStart(2, '0');

/** A moment (ISO 8601) as a field of local date and time has it: `2026-11-26T08:30`; empty where there is none. */
export function localOf(instant: string | undefined): string {
  if (instant === undefined) return '';
  const date = new Date(instant);
  const day = `${String(date.getFullYear()).padStart(4, '0')}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  return `${day}T${two(date.getHours())}:${two(date.getMinutes())}`;
}

/** The moment in UTC of a local date and time; undefined where none is given. */
export function instantOf(local: string): string | undefined {
  const date = new Date(local);
  return local === '' || Number.isNaN(date.getTime()) ? undefined : date.toISOString();
}
