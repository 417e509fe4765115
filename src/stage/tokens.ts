/**
 * The look of Bellwire in one file: colours, type and sizes. The pages turn it into CSS variables, the stage draws with it.
 * Colours are sRGB hex. Nothing here knows a part or a page.
 */

/** Colours of the pages: what surrounds the work, what one reads, what one does next. */
export const COLOURS = {
  ground: '#17211E',
  /** Header and bottom strip. */
  bar: '#111917',
  rail: '#131C19',
  line: '#2C3B36',
  /** A row, chip or button that keeps quiet on the rails. */
  quiet: '#1F2B27',
  paper: '#F3EBDD',
  paperLight: '#FBF7EC',
  paperLine: '#DCCFB8',
  ink: '#20281F',
  /** Less important ink on paper; 4.5:1 on `paper`. */
  inkSoft: '#5A5748',
  /** Text on the rails. */
  onDark: '#F3EBDD',
  onDarkSoft: '#B9C2BA',
  action: '#D9662F',
  /** Text on `action`; 4.5:1 there. */
  onAction: '#1B130D',
  /** `action` as text on paper; 4.5:1 there. */
  actionInk: '#A33F10',
  good: '#2F6B57',
  focus: '#F2B04A',
  meterTop: '#4B3560',
  meterBottom: '#3A2850',
  meterEdge: '#6B5580',
  onMeter: '#EFE6DA',
  key: '#EFE6DA',
  keyInk: '#2A2033',
  keyInkSoft: '#5B4E66',
  keyOn: '#F2B04A',
  keyOnEdge: '#C8842A',
  display: '#CDD6BE',
  displayInk: '#1C241B',
} as const;

/** Colours of the pages for whoever needs more contrast: 7:1 for what is read, lines that can be seen. */
export const MORE_CONTRAST = {
  ground: '#0B110F',
  bar: '#060A09',
  rail: '#0B110F',
  line: '#5E7169',
  quiet: '#15201C',
  paper: '#FBF7EC',
  paperLight: '#FFFFFF',
  paperLine: '#A8997C',
  ink: '#0E130D',
  inkSoft: '#3A382D',
  onDark: '#FFFFFF',
  onDarkSoft: '#E3E9E4',
  action: '#F08B55',
  actionInk: '#7A2D08',
} as const;

/** Insulation colours, by the names that rigs use. */
export const WIRE = {
  red: '#C8402F',
  white: '#F2EEE4',
  yellow: '#E2B93B',
  green: '#3F8F5B',
  blue: '#3B6FA8',
  black: '#23262B',
  brown: '#7A5234',
  orange: '#D9762F',
  grey: '#8D918C',
  copper: '#B9733E',
} as const;

/** What the scenes are made of. */
export const MATERIAL = {
  plasterLight: '#E9DFC8',
  plaster: '#DED3BA',
  plasterShade: '#AA9D81',
  shelfEdge: '#8A7656',
  shelf: '#6B5A41',
  enamelLight: '#FAF6EC',
  enamel: '#EFE8DA',
  enamelShade: '#DCD3C3',
  enamelLine: '#CFC3AF',
  hole: '#2A241A',
  brassLight: '#DDBF92',
  brass: '#C79A55',
  brassShade: '#8A6230',
  brassSlot: '#6B4A1F',
  boardLow: '#2A463A',
  boardInset: '#1B2E27',
  boardTrace: '#547766',
  boardInk: '#E9F0E4',
  pin: '#D9B266',
  pinLight: '#F2DCA4',
  cells: '#B7BDB4',
  displayIdle: '#C7D1BA',
  toggleTrack: '#BEB39C',
  toggleKnob: '#F6F0E2',
  steelLight: '#C3C7C2',
  steel: '#9BA19C',
  steelShade: '#6F7672',
  steelDark: '#4A514E',
  iron: '#353B39',
  cavity: '#5A625E',
  cavityLow: '#474F4B',
  cabinetShade: '#B8B2A1',
  cabinetLine: '#9C9684',
  outdoorWall: '#B79F86',
  outdoorUnitShade: '#9A9789',
  sky: '#AEBFC4',
  skyHigh: '#8FA9B5',
  grass: '#7C8A5C',
  grassShade: '#66744A',
  slab: '#A9A498',
  slabShade: '#8B867A',
  closetWall: '#CFC4AC',
  closetShade: '#A79B80',
  floor: '#7A6A50',
  panelGreyShade: '#6B7370',
  breaker: '#26292B',
  benchWood: '#8F7551',
  label: '#EFE6C8',
  labelInk: '#2A2A22',
  caution: '#E2B93B',
  cautionInk: '#231C08',
  relay: '#1E2C33',
  relayFace: '#2B3D46',
  plastic: '#2C3238',
  copperPipe: '#B5713F',
  copperPipeLight: '#D69A68',
  water: '#6A9BB0',
  glow: '#FF8A3C',
  glowCore: '#FFE3B0',
  flame: '#4F86E0',
  flameCore: '#BFE0FF',
  lightOn: '#FF5A3C',
  lightOff: '#5A2A22',
  probeTip: '#ECEDE8',
  redLead: '#C8402F',
  redLeadShade: '#8E2A1E',
  blackLead: '#3A3F47',
  blackLeadCable: '#1E2126',
  outline: '#1C211E',
  shadow: 'rgba(60, 48, 20, 0.32)',
  fuse: '#B58BC4',
  fuseShade: '#8C5F9E',
  fuseElement: '#5C3F68',
  fuseBurnt: '#3A2A42',
  winding: '#C9A45E',
  windingShade: '#A27D3B',
  coil: '#6E3B2A',
  coilTurn: '#8F5238',
  nut: '#6F7C86',
  nutShade: '#4B5660',
  nutLine: '#3A434B',
  rust: '#B4532A',
  rustShade: '#6A2F14',
  sidingLight: '#C9B299',
  sidingShade: '#8C755D',
  floatCup: '#8FA3A3',
  floatCupLine: '#5F7070',
  floatGlass: '#C9D6D4',
  spark: '#FFE0D4',
  displayOff: '#B9C0AD',
  displayLine: '#A9B19D',
  boardTop: '#35604F',
  matTop: '#46645B',
  matFoot: '#38534B',
  boardEdge: '#20382F',
  white: '#FFFFFF',
  clamp: '#5A4270',
  clampGrip: '#4B3560',
  glowHalo: 'rgba(255, 170, 80, 0.75)',
  glowGone: 'rgba(255, 120, 40, 0)',
  flameVeil: 'rgba(79, 134, 224, 0.9)',
  lightHalo: 'rgba(255, 120, 80, 0.85)',
  lightGone: 'rgba(255, 90, 60, 0)',
} as const;

/** Enamel, paper and plastic that has yellowed, lightest first. */
export const CREAM = ['#FBF7EC', '#F3EEE2', '#E9E2D2', '#DDD6C4', '#C9C3B3', '#B3AB98', '#938C7A', '#7E7768'] as const;

/** Sheet metal from a lit edge to a dark slot, lightest first. */
export const STEEL = [
  '#EEF0EA',
  '#D3D6D0',
  '#BFC4BE',
  '#A6ACA7',
  '#959C98',
  '#7F8683',
  '#6F7672',
  '#59615D',
  '#474F4B',
  '#353B39',
  '#262C2A',
  '#171B1A',
] as const;

/** Wood, and warm ink on it, lightest first. */
export const WOOD = ['#C9B48C', '#A98A60', '#8C7B5E', '#7C745F', '#6E5739', '#5A5240', '#4E463A', '#35301F'] as const;

/** The dark of a shadow, at an opacity of 0…1. */
export function shade(alpha: number): string {
  return `rgba(30, 26, 16, ${String(alpha)})`;
}

/** Light that lies on something, at an opacity of 0…1. */
export function light(alpha: number): string {
  return `rgba(255, 255, 255, ${String(alpha)})`;
}

/** Type families with what stands in while or if they do not load. */
export const FAMILIES = {
  /** Names and headings; wide for names, heavy for headings. */
  display: "'Archivo Variable', Archivo, 'Arial Nova', Arial, sans-serif",
  text: "'Atkinson Hyperlegible Next Variable', 'Atkinson Hyperlegible Next', Verdana, sans-serif",
  mono: "'Atkinson Hyperlegible Mono Variable', 'Atkinson Hyperlegible Mono', 'DejaVu Sans Mono', monospace",
} as const;

/** Sizes of the pages in CSS pixels at a text scale of 100 %. */
export const SIZES = {
  /** Smallest thing that a finger must hit (WCAG 2.2, 2.5.8 asks 24; bench.md asks 44). */
  target: 44,
  header: 56,
  leftRail: 252,
  rightRail: 316,
  strip: 64,
  corner: 10,
  smallCorner: 7,
  gap: 16,
  heading: 18,
  text: 15,
  small: 13,
} as const;

/** The scenes' own units: every place is drawn on a field this large and scaled to the screen. */
export const SCENE = { width: 800, height: 648 } as const;

/** Sizes of what is written on the stage, scene units: nothing is smaller than `small`. */
export const LETTERS = { small: 13, name: 13.5, plate: 14, terminal: 15.5 } as const;

/** Corners and lines of what is drawn: every face takes these. */
export const INK = { corner: 7, smallCorner: 4, edge: 1.2, fine: 1.6 } as const;

/** Finishes of solid things: lit edge, shaded foot, line round it. */
export const FINISH = {
  enamel: { top: MATERIAL.enamelLight, foot: MATERIAL.enamelShade, edge: MATERIAL.enamelLine },
  painted: { top: CREAM[2], foot: CREAM[4], edge: CREAM[6] },
  zinc: { top: STEEL[1], foot: STEEL[4], edge: MATERIAL.steelDark },
  steel: { top: STEEL[3], foot: STEEL[6], edge: STEEL[8] },
  iron: { top: STEEL[8], foot: STEEL[9], edge: STEEL[11] },
  plastic: { top: STEEL[9], foot: MATERIAL.breaker, edge: STEEL[11] },
  board: { top: MATERIAL.boardTop, foot: MATERIAL.boardLow, edge: MATERIAL.boardEdge },
  brass: { top: MATERIAL.brassLight, foot: MATERIAL.brass, edge: MATERIAL.brassShade },
  ceramic: { top: CREAM[0], foot: CREAM[3], edge: CREAM[6] },
  signal: { top: '#E98A54', foot: COLOURS.action, edge: MATERIAL.rustShade },
} as const;
export type Finish = keyof typeof FINISH;
