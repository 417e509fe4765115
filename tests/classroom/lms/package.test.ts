/** What an instructor hands to a learning system: one zip, whose manifest and page hold what they should. */
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { loadAssignment } from '../../../src/classroom/assignment.ts';
import { PACKAGE_KINDS } from '../../../src/classroom/lms/manifests.ts';
import { packageOf } from '../../../src/cli/package.ts';

const PAGE = '<!doctype html><html><head><title>x</title></head><body></body></html>';
const assignment = {
  format: 'bellwire-assignment',
  version: 1,
  id: 'week-9',
  title: 'Furnace & <air> "nine"',
  note: 'Ends a script: </script><!-- \u0001',
  mode: 'graded',
  seed: 3,
  items: [{ kind: 'shipped', ticket: 'fanButNoCooling' }],
};

describe.each(PACKAGE_KINDS)('%s', (kind) => {
  const packed = packageOf(kind, assignment, PAGE, { language: 'en', passAt: 80 });
  const files = unzipSync(packed);
  const manifest = strFromU8(files[kind === 'cmi5' ? 'cmi5.xml' : 'imsmanifest.xml']!);

  it('holds its manifest at the top, the page, and nothing else; the same bytes every time', () => {
    expect(Object.keys(files).sort()).toEqual(['index.html', kind === 'cmi5' ? 'cmi5.xml' : 'imsmanifest.xml'].sort());
    expect(packageOf(kind, assignment, PAGE, { language: 'en', passAt: 80 })).toEqual(packed);
  });

  it('names the page, the title and the mark, and what stands in the title does not break it', () => {
    expect(manifest).toContain('index.html');
    expect(manifest).toContain('Furnace &amp; &lt;air&gt; &quot;nine&quot;');
    expect(manifest).toMatch(kind === 'scorm12' ? /masteryscore>80</ : /0\.8/);
    expect(manifest).not.toContain('\u0001');
    // Every tag that opens closes: counted without a parser.
    const opened = [...manifest.matchAll(/<([A-Za-z:0-9]+)(?=[\s>])[^>]*?(?<!\/)>/g)].map((match) => match[1]).sort();
    const closed = [...manifest.matchAll(/<\/([A-Za-z:0-9]+)>/g)].map((match) => match[1]).sort();
    expect(opened).toEqual(closed);
  });

  it('carries the assignment in the page, where no text of it ends the script', () => {
    const page = strFromU8(files['index.html']!);
    const [, data] = page.match(/<script type="application\/json" id="bellwire-assignment">(.*?)<\/script>/s) ?? [];
    expect(loadAssignment(JSON.parse(data ?? ''))).toEqual(loadAssignment(assignment));
    expect(data).not.toContain('<');
  });
});

it('a bad assignment, and a page that is none, are refused by name', () => {
  const pack = (json: unknown, page = PAGE) => packageOf('scorm12', json, page, { language: 'en', passAt: undefined });
  expect(() => pack({ ...assignment, items: [{ kind: 'shipped', ticket: 'noSuch' }] })).toThrow(
    /classroom.noTicket at items\[0\].ticket/,
  );
  expect(() => pack({ ...assignment, id: '../x' })).toThrow(/id/);
  expect(() => pack(assignment, 'no page')).toThrow(/package.noPage/);
});
