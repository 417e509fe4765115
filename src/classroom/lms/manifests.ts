/**
 * What a learning system reads of a package. SCORM 1.2: ADL, The SCORM Content Aggregation Model 1.2 (2001); SCORM 2004: ADL, SCORM 2004
 * 4th Edition CAM (2009); cmi5: AICC/ADL, cmi5 Specification Profile for xAPI, Quartz 1st Edition (2016). Element names from memory of these.
 */
export const PACKAGE_KINDS = ['scorm12', 'scorm2004', 'cmi5'] as const;
export type PackageKind = (typeof PACKAGE_KINDS)[number];

export interface Packaged {
  /** The assignment's id: letters, digits and hyphens. */
  readonly id: string;
  readonly title: string;
  readonly note: string;
  /** Language of title and note, BCP 47. */
  readonly language: string;
  /** Points of 100 from which it counts as passed; nothing passes or fails where left out. */
  readonly passAt: number | undefined;
  /** Paths of what lies beside {@link LAUNCH_FILE}. */
  readonly files: readonly string[];
}

/** The page that a package opens. */
export const LAUNCH_FILE = 'index.html';

/** The file that a learning system looks for in a package, and its text. */
export function manifestOf(kind: PackageKind, packaged: Packaged): { readonly name: string; readonly text: string } {
  if (kind === 'cmi5') return { name: 'cmi5.xml', text: cmi5(packaged) };
  return { name: 'imsmanifest.xml', text: kind === 'scorm12' ? scorm12(packaged) : scorm2004(packaged) };
}

export function escapeXml(text: string): string {
  // Control characters have no place in XML 1.0, escaped or not.
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out
  const clean = text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '');
  return clean.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;').replace(/'/g, '&apos;');
}

const HEAD = '<?xml version="1.0" encoding="UTF-8"?>';

const fileLines = (files: readonly string[]): string =>
  [LAUNCH_FILE, ...files].map((name) => `      <file href="${escapeXml(name)}"/>`).join('\n');

function scorm12({ id, title, passAt, files }: Packaged): string {
  const mastery = passAt === undefined ? '' : `\n        <adlcp:masteryscore>${passAt}</adlcp:masteryscore>`;
  return `${HEAD}
<manifest identifier="bellwire-${id}" version="1.0"
  xmlns="http://www.imsproject.org/xsd/imscp_rootv1p1p2"
  xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_rootv1p2">
  <metadata>
    <schema>ADL SCORM</schema>
    <schemaversion>1.2</schemaversion>
  </metadata>
  <organizations default="organization">
    <organization identifier="organization">
      <title>${escapeXml(title)}</title>
      <item identifier="item" identifierref="resource" isvisible="true">
        <title>${escapeXml(title)}</title>${mastery}
      </item>
    </organization>
  </organizations>
  <resources>
    <resource identifier="resource" type="webcontent" adlcp:scormtype="sco" href="${LAUNCH_FILE}">
${fileLines(files)}
    </resource>
  </resources>
</manifest>
`;
}

function scorm2004({ id, title, passAt, files }: Packaged): string {
  const objective =
    passAt === undefined
      ? '<imsss:primaryObjective objectiveID="whole"/>'
      : `<imsss:primaryObjective objectiveID="whole" satisfiedByMeasure="true">
              <imsss:minNormalizedMeasure>${passAt / 100}</imsss:minNormalizedMeasure>
            </imsss:primaryObjective>`;
  return `${HEAD}
<manifest identifier="bellwire-${id}" version="1.0"
  xmlns="http://www.imsglobal.org/xsd/imscp_v1p1"
  xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_v1p3"
  xmlns:imsss="http://www.imsglobal.org/xsd/imsss">
  <metadata>
    <schema>ADL SCORM</schema>
    <schemaversion>2004 4th Edition</schemaversion>
  </metadata>
  <organizations default="organization">
    <organization identifier="organization">
      <title>${escapeXml(title)}</title>
      <item identifier="item" identifierref="resource">
        <title>${escapeXml(title)}</title>
        <imsss:sequencing>
          <imsss:objectives>
            ${objective}
          </imsss:objectives>
          <imsss:deliveryControls completionSetByContent="true" objectiveSetByContent="true"/>
        </imsss:sequencing>
      </item>
    </organization>
  </organizations>
  <resources>
    <resource identifier="resource" type="webcontent" adlcp:scormType="sco" href="${LAUNCH_FILE}">
${fileLines(files)}
    </resource>
  </resources>
</manifest>
`;
}

function cmi5({ id, title, note, language, passAt }: Packaged): string {
  const said = (text: string) => `<langstring lang="${escapeXml(language)}">${escapeXml(text)}</langstring>`;
  const mastery = passAt === undefined ? '' : ` masteryScore="${passAt / 100}"`;
  const moveOn = passAt === undefined ? 'Completed' : 'CompletedAndPassed';
  return `${HEAD}
<courseStructure xmlns="https://w3id.org/xapi/profiles/cmi5/v1/CourseStructure.xsd">
  <course id="${courseIri(id)}">
    <title>${said(title)}</title>
    <description>${said(note || title)}</description>
  </course>
  <au id="${courseIri(id)}/work" moveOn="${moveOn}" launchMethod="AnyWindow"${mastery}>
    <title>${said(title)}</title>
    <description>${said(note || title)}</description>
    <url>${LAUNCH_FILE}</url>
  </au>
</courseStructure>
`;
}

/** A name in the form of an IRI that needs no host of ours: a tag URI (RFC 4151) under the domain that RFC 2606 keeps for examples. */
export function courseIri(id: string): string {
  return `tag:bellwire.example,2026:assignment/${id}`;
}
