/** What an instructor hands to a learning system: one zip, whose manifest and page hold what they should. */
import { strFromU8, strToU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { loadAssignment } from '../../../src/classroom/assignment.ts';
import { PACKAGE_KINDS } from '../../../src/classroom/lms/manifests.ts';
import { loadAppFiles, packageOf } from '../../../src/classroom/lms/package.ts';

const APP: Readonly<Record<string, string>> = {
  'index.html': '<!doctype html><html><head><title>x</title></head><body><script src="./assets/index-1.js"></script></body></html>',
  'assets/index-1.js': 'go()'.repeat(1000),
  'icon.svg': '<svg/>',
};
const LISTED = { entry: 'assets/index-1.js', files: ['assets/index-1.js', 'icon.svg'] };
const assignment = loadAssignment({
  format: 'bellwire-assignment',
  version: 1,
  id: 'week-9',
  title: 'Furnace & <air> "nine"',
  note: 'Ends a script: </script><!-- \u0001',
  mode: 'graded',
  seed: 3,
  items: [{ kind: 'shipped', ticket: 'fanButNoCooling' }],
});
const pack = (kind: (typeof PACKAGE_KINDS)[number], app = APP) =>
  packageOf(
    { kind, assignment, language: 'en', passAt: 80 },
    LISTED,
    async (name) => strToU8(app[name] ?? ''),
    () => Promise.resolve(),
  );

it('refuses more answers to exercises and exams than the learning system is sure to keep', async () => {
  const pack = (attempts: number) => {
    const papers = [{ kind: 'drills' as const, drills: ['reading'], count: 30 }];
    const packing = { kind: 'scorm12', assignment: { ...assignment, attempts, papers }, language: 'en', passAt: 80 } as const;
    return packageOf(
      packing,
      LISTED,
      async (name) => strToU8(APP[name] ?? ''),
      () => Promise.resolve(),
    );
  };
  expect((await pack(4)).length).toBeGreaterThan(0);
  await expect(pack(5)).rejects.toMatchObject({
    code: 'package.papers',
    path: 'papers',
    values: { answers: 150, standard: 'SCORM 1.2' },
  });
});

describe.each(PACKAGE_KINDS)('%s', async (kind) => {
  const packed = await pack(kind);
  const files = unzipSync(packed);
  const name = kind === 'cmi5' ? 'cmi5.xml' : 'imsmanifest.xml';
  const manifest = strFromU8(files[name]!);

  it('holds its manifest at the top, the page, the app’s files as they are, and nothing else; the same bytes every time', async () => {
    expect(Object.keys(files).sort()).toEqual(['index.html', name, ...LISTED.files].sort());
    for (const each of LISTED.files) expect(strFromU8(files[each]!)).toBe(APP[each]);
    expect(await pack(kind)).toEqual(packed);
  });

  it('names the page, the title and the mark, and what stands in the title does not break it', () => {
    expect(manifest).toContain('index.html');
    expect(manifest).toContain('Furnace &amp; &lt;air&gt; &quot;nine&quot;');
    expect(manifest).toMatch(kind === 'scorm12' ? /masteryscore>80</ : /0\.8/);
    expect(manifest).not.toContain('\u0001');
    // cmi5 lists no files; both editions of SCORM list all.
    const listed = [...manifest.matchAll(/<file href="(.*?)"\/>/g)].map((match) => match[1]);
    expect(listed).toEqual(kind === 'cmi5' ? [] : ['index.html', ...LISTED.files]);
    // Every tag that opens closes: counted without a parser.
    const opened = [...manifest.matchAll(/<([A-Za-z:0-9]+)(?=[\s>])[^>]*?(?<!\/)>/g)].map((match) => match[1]).sort();
    const closed = [...manifest.matchAll(/<\/([A-Za-z:0-9]+)>/g)].map((match) => match[1]).sort();
    expect(opened).toEqual(closed);
  });

  it('carries the assignment in the page, where no text of it ends the script', () => {
    const page = strFromU8(files['index.html']!);
    const [, data] = page.match(/<script type="application\/json" id="bellwire-assignment">(.*?)<\/script>/s) ?? [];
    expect(loadAssignment(JSON.parse(data ?? ''))).toEqual(assignment);
    expect(data).not.toContain('<');
  });
});

it('a page that is none, and one of another build, are refused', async () => {
  await expect(pack('cmi5', { ...APP, 'index.html': 'assets/index-1.js' })).rejects.toThrow(/package.noPage/);
  await expect(pack('cmi5', { ...APP, 'index.html': APP['index.html']!.replace('-1', '-2') })).rejects.toThrow(/package.noPage/);
});

it.each(['', '<!doctype html>', '{"entry":"a.js","files":["../secret"]}', '{"entry":"a.js","files":["/etc/x"]}'])(
  '%j is no list of files',
  (text) => {
    expect(() => loadAppFiles(text)).toThrow(/package.noPage/);
  },
);
