import type { BenchView } from '../attempt/view.ts';
import { bushing, louvre } from './hardware.ts';
import { type Box, disc, downward, fillBox, lifted, line, type Pen, strokeBox } from './pen.ts';
import { MATERIAL, SCENE } from './tokens.ts';
import type { Spot } from './wires.ts';

/** Words beside what they name: a heading and a line under it, by key. */
export interface Caption extends Spot {
  readonly heading: string;
  readonly line?: string;
  /** Widest that the line may run, scene units. */
  readonly most?: number;
}

/** Two ends of a conduit or grommet that wires between enclosures go through. */
export interface Join {
  readonly from: Spot;
  readonly to: Spot;
}

export type CoverLook = 'enamel' | 'louvred' | 'grey';

/** What stands around the parts of a place. Only looks: a place without a look of its own is a bare wall. */
export interface PlaceLook {
  /** Paints wall, floor and cabinets over all of `bounds`, which may reach beyond the scene. */
  backdrop(pen: Pen, bounds: Box): void;
  readonly coverLook: CoverLook;
  /** Wires run behind the faces here; only their ends lie in front. */
  readonly harness: boolean;
  readonly wireWidth: number;
  /** Where wires leave for other places. */
  readonly exits: readonly Spot[];
  readonly joins: readonly Join[];
  /** Where the tags stand that put opened covers back, in the order of the place's covers. */
  readonly tags?: readonly Spot[];
  captions?(view: BenchView): readonly Caption[];
}

const FOOT = 596;

function right(bounds: Box): number {
  return bounds.x + bounds.width;
}

/** Lamp light on a wall: brightest at the middle, falling off to the corners. */
function lamp(pen: Pen, _bounds: Box, light: string, middle: string, shade: string): CanvasGradient {
  const glow = pen.createRadialGradient(SCENE.width * 0.42, SCENE.height * 0.2, 40, SCENE.width * 0.45, SCENE.height * 0.34, 760);
  glow.addColorStop(0, light);
  glow.addColorStop(0.45, middle);
  glow.addColorStop(1, shade);
  return glow;
}

function wall(pen: Pen, bounds: Box, light: string, middle: string, shade: string): void {
  pen.fillStyle = lamp(pen, bounds, light, middle, shade);
  pen.fillRect(bounds.x, bounds.y, bounds.width, bounds.height);
}

function courses(pen: Pen, bounds: Box, step: number, colour: string): void {
  for (let y = 40 - step * Math.ceil((40 - bounds.y) / step); y < FOOT; y += step) {
    line(
      pen,
      [
        [bounds.x, y],
        [right(bounds), y],
      ],
      colour,
      2,
    );
  }
}

function ledge(pen: Pen, bounds: Box, edge: string, top: string): void {
  pen.fillStyle = top;
  pen.fillRect(bounds.x, FOOT, bounds.width, bounds.y + bounds.height - FOOT);
  pen.fillStyle = edge;
  pen.fillRect(bounds.x, FOOT, bounds.width, 7);
}

function thermostatCaptions(view: BenchView): readonly Caption[] {
  const body = view.parts.find((part) => part.body !== undefined)?.body;
  const base = { x: 40, y: 46, heading: 'stage:heading.subbase', line: 'stage:heading.subbaseLine' };
  switch (body) {
    case 'seated':
      return [{ x: 40, y: 46, heading: 'stage:heading.seated', line: 'stage:heading.seatedLine', most: 340 }];
    case 'pulled':
      return [base, { x: 40, y: 294, heading: 'stage:heading.pulled', line: 'stage:heading.pulledLine' }];
    case 'turned':
      return [base, { x: 40, y: 294, heading: 'stage:heading.turned', line: 'stage:heading.turnedLine' }];
    default:
      return [base];
  }
}

const hallway: PlaceLook = {
  coverLook: 'enamel',
  harness: false,
  wireWidth: 9,
  exits: [],
  joins: [],
  backdrop(pen, bounds) {
    wall(pen, bounds, MATERIAL.plasterLight, MATERIAL.plaster, MATERIAL.plasterShade);
    courses(pen, bounds, 60, 'rgba(120, 100, 60, 0.13)');
    ledge(pen, bounds, MATERIAL.shelfEdge, MATERIAL.shelf);
  },
  captions: thermostatCaptions,
};

const mat: PlaceLook = {
  coverLook: 'enamel',
  harness: false,
  wireWidth: 9,
  exits: [],
  joins: [],
  backdrop(pen, bounds) {
    wall(pen, bounds, '#A98A60', MATERIAL.benchWood, '#6E5739');
    for (let y = bounds.y; y < bounds.y + bounds.height; y += 54) {
      line(
        pen,
        [
          [bounds.x, y],
          [right(bounds), y],
        ],
        'rgba(60, 42, 20, 0.28)',
        1.6,
      );
      line(
        pen,
        [
          [bounds.x, y + 21],
          [right(bounds), y + 17],
        ],
        'rgba(60, 42, 20, 0.1)',
        1.2,
      );
      line(
        pen,
        [
          [bounds.x, y + 36],
          [right(bounds), y + 41],
        ],
        'rgba(60, 42, 20, 0.08)',
        1.2,
      );
    }
    const sheet = { x: 28, y: 24, width: 744, height: 560 };
    lifted(pen, 8, () => {
      fillBox(pen, sheet, 10, downward(pen, sheet, '#46645B', '#38534B'));
    });
    for (let x = 68; x < 760; x += 40)
      line(
        pen,
        [
          [x, 34],
          [x, 574],
        ],
        'rgba(160, 190, 175, 0.1)',
        1,
      );
    for (let y = 64; y < 576; y += 40)
      line(
        pen,
        [
          [38, y],
          [762, y],
        ],
        'rgba(160, 190, 175, 0.1)',
        1,
      );
    strokeBox(pen, { x: 34, y: 30, width: 732, height: 548 }, 7, 'rgba(190, 214, 200, 0.22)', 1.4);
  },
  captions: (view) =>
    view.parts.some((part) => part.body === 'mat')
      ? [{ x: 60, y: 62, heading: 'stage:heading.mat', line: 'stage:heading.matLine' }]
      : [{ x: 60, y: 62, heading: 'stage:heading.matEmpty', line: 'stage:heading.matEmptyLine', most: 480 }],
};

const CABINET: Box = { x: 176, y: 6, width: 622, height: 592 };

const furnace: PlaceLook = {
  coverLook: 'enamel',
  harness: true,
  wireWidth: 5,
  tags: [
    { x: 10, y: 500 },
    { x: 10, y: 546 },
  ],
  exits: [
    { x: 200, y: 574 },
    { x: 10, y: 236 },
    { x: 10, y: 330 },
  ],
  joins: [
    { from: { x: 356, y: 294 }, to: { x: 356, y: 294 } },
    { from: { x: 476, y: 294 }, to: { x: 476, y: 294 } },
    { from: { x: 596, y: 294 }, to: { x: 596, y: 294 } },
    { from: { x: 94, y: 212 }, to: { x: 192, y: 312 } },
    { from: { x: 164, y: 320 }, to: { x: 194, y: 350 } },
  ],
  backdrop(pen, bounds) {
    wall(pen, bounds, '#D9CFB8', MATERIAL.closetWall, MATERIAL.closetShade);
    // Studs behind the closet's board.
    for (let x = bounds.x - (bounds.x % 96); x < right(bounds); x += 96)
      line(
        pen,
        [
          [x, bounds.y],
          [x, FOOT],
        ],
        'rgba(110, 90, 50, 0.12)',
        2,
      );
    ledge(pen, bounds, '#8C7B5E', MATERIAL.floor);
    // Flue and supply duct above, conduit from the switch.
    pen.lineCap = 'round';
    line(
      pen,
      [
        [94, 206],
        [94, 246],
        [120, 262],
        [176, 300],
      ],
      MATERIAL.steelShade,
      13,
    );
    line(
      pen,
      [
        [94, 206],
        [94, 246],
        [120, 262],
        [176, 300],
      ],
      MATERIAL.steel,
      8,
    );
    pen.lineCap = 'butt';
    lifted(pen, 10, () => {
      fillBox(pen, CABINET, 8, downward(pen, CABINET, '#DDD8CA', MATERIAL.cabinetShade));
    });
    strokeBox(pen, CABINET, 8, MATERIAL.cabinetLine, 1.4);
  },
};

const UNIT: Box = { x: 178, y: 14, width: 616, height: 584 };

const outdoor: PlaceLook = {
  coverLook: 'louvred',
  harness: true,
  wireWidth: 6,
  tags: [
    { x: 12, y: 26 },
    { x: 12, y: 70 },
  ],
  exits: [
    { x: 198, y: 138 },
    { x: 89, y: 128 },
  ],
  joins: [{ from: { x: 118, y: 372 }, to: { x: 190, y: 470 } }],
  backdrop(pen, bounds) {
    wall(pen, bounds, '#C9B299', MATERIAL.outdoorWall, '#8C755D');
    for (let y = bounds.y - (bounds.y % 34); y < 560; y += 34)
      line(
        pen,
        [
          [bounds.x, y],
          [right(bounds), y],
        ],
        'rgba(70, 50, 30, 0.2)',
        2,
      );
    pen.fillStyle = MATERIAL.grass;
    pen.fillRect(bounds.x, 574, bounds.width, bounds.y + bounds.height - 574);
    pen.fillStyle = MATERIAL.grassShade;
    for (let x = bounds.x; x < right(bounds); x += 22) {
      pen.beginPath();
      pen.moveTo(x, 576);
      pen.lineTo(x + 5, 566);
      pen.lineTo(x + 10, 576);
      pen.fill();
    }
    pen.fillStyle = MATERIAL.slab;
    pen.fillRect(160, 592, 660, 18);
    pen.fillStyle = MATERIAL.slabShade;
    pen.fillRect(160, 604, 660, 6);
    // The whip from the disconnect, and the line set.
    pen.lineCap = 'round';
    for (const [colour, width] of [
      ['#3A403D', 15],
      ['#59615D', 9],
    ] as const) {
      pen.beginPath();
      pen.moveTo(118, 358);
      pen.bezierCurveTo(118, 440, 140, 470, 184, 470);
      pen.strokeStyle = colour;
      pen.lineWidth = width;
      pen.stroke();
    }
    line(
      pen,
      [
        [bounds.x, 540],
        [178, 540],
      ],
      '#2C302E',
      16,
    );
    line(
      pen,
      [
        [bounds.x, 562],
        [178, 562],
      ],
      MATERIAL.copperPipe,
      7,
    );
    pen.lineCap = 'butt';
    lifted(pen, 12, () => {
      fillBox(pen, UNIT, 10, downward(pen, UNIT, '#CBC8BC', MATERIAL.outdoorUnitShade));
    });
    strokeBox(pen, UNIT, 10, '#7F7C70', 1.4);
  },
};

const panel: PlaceLook = {
  coverLook: 'grey',
  tags: [{ x: 6, y: 60 }],
  harness: true,
  wireWidth: 8,
  exits: [
    { x: 178, y: 560 },
    { x: 622, y: 560 },
    { x: 386, y: 566 },
  ],
  joins: [],
  backdrop(pen, bounds) {
    wall(pen, bounds, '#BFB9A8', '#A7A08D', '#716B5A');
    for (let y = bounds.y - (bounds.y % 44); y < FOOT; y += 44) {
      const shift = Math.abs(Math.round(y / 44)) % 2 === 0 ? 0 : 44;
      line(
        pen,
        [
          [bounds.x, y],
          [right(bounds), y],
        ],
        'rgba(60, 55, 40, 0.16)',
        2,
      );
      for (let x = bounds.x - (bounds.x % 88) + shift; x < right(bounds); x += 88)
        line(
          pen,
          [
            [x, y],
            [x, y + 44],
          ],
          'rgba(60, 55, 40, 0.12)',
          2,
        );
    }
    ledge(pen, bounds, '#7C745F', '#655D4A');
    fillBox(pen, { x: 384, y: bounds.y, width: 32, height: 30 - bounds.y }, 0, MATERIAL.steelShade);
    const box = { x: 138, y: 4, width: 524, height: 592 };
    lifted(pen, 12, () => {
      fillBox(pen, box, 8, downward(pen, box, '#959C98', MATERIAL.panelGreyShade));
    });
    strokeBox(pen, box, 8, MATERIAL.steelDark, 1.4);
  },
};

const bare: PlaceLook = { ...hallway, captions: () => [] };

const LOOKS: Readonly<Record<string, PlaceLook>> = { hallway, mat, furnace, outdoor, panel };

export function lookOf(place: string): PlaceLook {
  return LOOKS[place] ?? bare;
}

/** The opening behind a cover. */
export function drawCavity(pen: Pen, box: Box): void {
  fillBox(pen, box, 5, downward(pen, box, MATERIAL.cavity, MATERIAL.cavityLow));
  pen.save();
  pen.beginPath();
  pen.rect(box.x, box.y, box.width, box.height);
  pen.clip();
  pen.fillStyle = 'rgba(0, 0, 0, 0.22)';
  pen.fillRect(box.x, box.y, box.width, 7);
  pen.fillRect(box.x, box.y, 5, box.height);
  pen.restore();
  strokeBox(pen, box, 5, '#202624', 1.5);
}

/** A cover in its place. */
export function drawLid(pen: Pen, box: Box, look: CoverLook): void {
  const colours = {
    enamel: ['#E6E1D2', '#C6C0AF', '#948D7B'],
    louvred: ['#CFCCC0', '#A5A295', '#7F7C70'],
    grey: ['#9BA29E', '#737B77', '#515855'],
  } as const;
  const [top, foot, edge] = colours[look];
  lifted(pen, 4, () => {
    fillBox(pen, box, 6, downward(pen, box, top, foot));
  });
  strokeBox(pen, box, 6, edge, 1.4);
  strokeBox(pen, { x: box.x + 9, y: box.y + 9, width: box.width - 18, height: box.height - 18 }, 4, 'rgba(60, 55, 40, 0.25)', 1.2);
  if (look === 'louvred' && box.width > 300) {
    for (let y = box.y + 40; y < box.y + box.height - 60; y += 24)
      louvre(pen, box.x + 30, y, box.width * 0.52, '#6B685C', '#E3E0D4');
  }
  if (look === 'enamel' && box.width > 300) {
    for (let row = 0; row < 5; row += 1)
      louvre(pen, box.x + box.width - 150, box.y + box.height - 110 + row * 16, 120, '#8E8876', '#F4F0E4');
  }
  for (const [x, y] of [
    [box.x + 16, box.y + 16],
    [box.x + box.width - 16, box.y + 16],
    [box.x + 16, box.y + box.height - 16],
    [box.x + box.width - 16, box.y + box.height - 16],
  ] as const) {
    disc(pen, x, y, 5, MATERIAL.steel);
    line(
      pen,
      [
        [x - 3, y - 3],
        [x + 3, y + 3],
      ],
      MATERIAL.steelDark,
      1.4,
    );
  }
}

/** Grommets and conduit ends of a place, where wires come and go. */
export function drawHoles(pen: Pen, look: PlaceLook): void {
  for (const exit of look.exits) bushing(pen, exit.x, exit.y, 13);
  for (const join of look.joins) {
    bushing(pen, join.from.x, join.from.y, 12);
    if (join.from !== join.to && (join.from.x !== join.to.x || join.from.y !== join.to.y)) bushing(pen, join.to.x, join.to.y, 12);
  }
}
