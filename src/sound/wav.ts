/** Samples in a second of every sound, Hz. */
export const SAMPLE_RATE = 22_050;

/**
 * Mono 16-bit PCM in a RIFF/WAVE file (Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft 1991):
 * a 44-byte header and little-endian samples. Values beyond ±1 are held there.
 */
export function wavBytes(samples: Float32Array): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(44 + samples.length * 2);
  const view = new DataView(bytes.buffer);
  const text = (at: number, letters: string): void => {
    for (let index = 0; index < letters.length; index += 1) view.setUint8(at + index, letters.charCodeAt(index));
  };
  text(0, 'RIFF');
  view.setUint32(4, 36 + samples.length * 2, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, SAMPLE_RATE, true);
  view.setUint32(28, SAMPLE_RATE * 2, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  text(36, 'data');
  view.setUint32(40, samples.length * 2, true);
  samples.forEach((sample, index) => {
    view.setInt16(44 + index * 2, Math.round(Math.min(1, Math.max(-1, sample)) * 32_767), true);
  });
  return bytes;
}

/** The file as a data address, which plays without a request and without a blob to give back. */
export function wavUrl(samples: Float32Array): string {
  let binary = '';
  for (const byte of wavBytes(samples)) binary += String.fromCharCode(byte);
  return `data:audio/wav;base64,${btoa(binary)}`;
}
