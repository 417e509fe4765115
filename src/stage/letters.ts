import { FAMILIES } from './tokens.ts';

/** Waits for the letters, but not for long: the bench comes up with what stands in for them. */
export async function lettersReady(): Promise<void> {
  const faces = [
    `600 14px ${FAMILIES.display}`,
    `400 14px ${FAMILIES.text}`,
    `600 14px ${FAMILIES.text}`,
    `700 14px ${FAMILIES.mono}`,
  ];
  const loaded = Promise.all(faces.map((face) => document.fonts.load(face)));
  const late = new Promise((resolve) => {
    setTimeout(resolve, 1500);
  });
  await Promise.race([loaded, late]).catch(() => undefined);
}
