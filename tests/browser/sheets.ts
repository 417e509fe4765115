/** Width of a sheet between margins of 15 mm, inches: ISO 216 for A4, ANSI/ASME Y14.1 for Letter. */
export const SHEETS = { A4: (210 - 30) / 25.4, Letter: 8.5 - 30 / 25.4 } as const;

/** Pages of a PDF: Chromium writes each page's dictionary in the clear. */
export function pagesIn(pdf: Buffer): number {
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}
