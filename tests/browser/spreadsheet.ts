/** What a spreadsheet makes of a file that a page saves, by a library of somebody else's. */
import { read, utils } from '@e965/xlsx';
import type { Download } from 'playwright-core';

export async function bytesOf(download: Download): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

/** The cells of its first sheet, numbers as numbers; empty ones are empty texts. */
export async function cellsOf(download: Download): Promise<(string | number)[][]> {
  const book = read(await bytesOf(download), { type: 'buffer' });
  const sheet = book.Sheets[book.SheetNames[0] ?? ''];
  if (sheet === undefined) throw new Error('no sheet');
  return utils.sheet_to_json(sheet, { header: 1, raw: true, defval: '', blankrows: false });
}
