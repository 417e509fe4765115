declare module 'subset-font' {
  interface Options {
    readonly targetFormat?: 'sfnt' | 'woff' | 'woff2';
    readonly variationAxes?: Readonly<Record<string, number | { readonly min: number; readonly max: number }>> | undefined;
    readonly keepFeatures?: readonly string[];
    readonly preserveNameIds?: readonly number[];
  }
  /** A font cut down to the letters of `text` and to part of its axes. */
  export default function subsetFont(font: Uint8Array, text: string, options?: Options): Promise<Uint8Array>;
}
