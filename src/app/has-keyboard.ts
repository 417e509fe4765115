/**
 * Whether single keys are worth speaking of here. No browser tells of a keyboard; a device that has a mouse or a pad beside (or
 * instead of) its touch screen is taken to have one.
 */
export function hasKeyboard(): boolean {
  return matchMedia('(any-hover: hover), (any-pointer: fine)').matches;
}
