/** Colours of a chart as the page has them now, resolved to plain colours that a canvas takes. */
export interface ChartLook {
  readonly paper: string;
  readonly ink: string;
  readonly quiet: string;
  readonly hair: string;
  readonly tones: readonly string[];
  readonly font: string;
  /** Black on white, told apart by hatchings and dashes alone: on paper, and where the reader forces colours. */
  readonly bare: boolean;
}

export const TONES = 8;

/**
 * Reads the look from parts of the element that carry the custom properties as their `color`: a canvas knows none.
 * @param probes In order: paper, ink, quiet, hair, then the tones.
 */
export function lookOf(probes: readonly Element[], printing: boolean): ChartLook {
  const colours = probes.map((probe) => getComputedStyle(probe).color);
  const [paper = '#fff', ink = '#000', quiet = '#000', hair = '#888', ...tones] = colours;
  const font = probes[0] ? getComputedStyle(probes[0]).fontFamily : 'sans-serif';
  if (printing)
    return {
      ...{ paper: '#fff', ink: '#000', quiet: '#000', hair: '#999', font, bare: true },
      tones: tones.map(() => '#000'),
    };
  const forced = globalThis.matchMedia?.('(forced-colors: active)').matches ?? false;
  return {
    paper,
    ink,
    quiet,
    hair,
    tones: forced ? tones.map(() => ink) : tones,
    font,
    bare: forced,
  };
}

const SIDE = 8;

/** Strokes of each hatching in a square of 8; the first has none. */
const strokes: readonly (readonly (readonly [number, number, number, number])[])[] = [
  [],
  [
    [-1, 9, 9, -1],
    [-5, 5, 5, -5],
    [3, 13, 13, 3],
  ],
  [[0, 2, 8, 2]],
  [
    [-1, -1, 9, 9],
    [-5, 3, 5, 13],
    [3, -5, 13, 5],
  ],
  [[2, 0, 2, 8]],
  [
    [0, 2, 8, 2],
    [2, 0, 2, 8],
  ],
  [
    [-1, 9, 9, -1],
    [-1, -1, 9, 9],
  ],
  [
    [0, 2, 3, 2],
    [4, 6, 7, 6],
  ],
];

/** The fill of a tone: its colour with a hatching of its own in it. On bare charts black hatching on white. */
export function fillOf(look: ChartLook, tone: number): CanvasPattern | string {
  const colour = look.tones[tone % TONES] ?? look.ink;
  const lines = strokes[tone % TONES]!;
  if (lines.length === 0) return colour;
  const square = document.createElement('canvas');
  square.width = SIDE;
  square.height = SIDE;
  const pen = square.getContext('2d');
  if (!pen) return colour;
  pen.fillStyle = look.bare ? look.paper : colour;
  pen.fillRect(0, 0, SIDE, SIDE);
  pen.strokeStyle = look.bare ? look.ink : look.paper;
  pen.globalAlpha = look.bare ? 1 : 0.45;
  pen.lineWidth = look.bare ? 1.25 : 1;
  for (const [x1, y1, x2, y2] of lines) {
    pen.beginPath();
    pen.moveTo(x1, y1);
    pen.lineTo(x2, y2);
    pen.stroke();
  }
  return pen.createPattern(square, 'repeat') ?? colour;
}

/** Dashes of a line, a set for each tone; the first is whole. */
export const dashesOf = (tone: number): number[] =>
  [[], [6, 3], [2, 2], [8, 3, 2, 3], [4, 4], [1, 3], [10, 4], [6, 2, 1, 2]][tone % TONES]!;
