// The sign of the program, drawn once: a window along time, the work in it, the line handed back. SVG and PNG are made of it.
import { crc32, deflateSync } from 'node:zlib';

const ground = '#14171b';
/** Bars on a square of 16 by 16. */
const bars = [
  { x: 2, y: 3, width: 12, height: 2, fill: '#7cc4f0' },
  { x: 4, y: 6.5, width: 7, height: 3, fill: '#2bb890' },
  { x: 2, y: 11, width: 12, height: 2, fill: '#e6da3f' },
];

export function iconSvg() {
  const rects = bars.map(
    ({ x, y, width, height, fill }) =>
      `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}"/>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><rect width="16" height="16" rx="2" fill="${ground}"/>${rects.join('')}</svg>\n`;
}

const channels = (colour) => [1, 3, 5].map((at) => parseInt(colour.slice(at, at + 2), 16));

/** The fill at a point of the square; undefined outside its round corners. */
function fillAt(x, y, isFull) {
  const inCorner = (from) => Math.max(2 - from, from - 14, 0);
  if (!isFull && Math.hypot(inCorner(x), inCorner(y)) > 2) return undefined;
  const bar = bars.find(
    (one) => x >= one.x && x < one.x + one.width && y >= one.y && y < one.y + one.height,
  );
  return bar ? bar.fill : ground;
}

/** Points of one pixel along each side that are looked at. */
const FINE = 4;

/**
 * @param isFull The ground fills the square and the bars keep to its middle, so that a device may cut any shape of it.
 * @returns The bytes of a PNG of `size` by `size`.
 */
export function iconPng(size, isFull = false) {
  const rows = Buffer.alloc(size * (size * 4 + 1));
  const scale = isFull ? 0.7 : 1;
  const point = (pixel, part) => (((pixel + (part + 0.5) / FINE) / size - 0.5) / scale + 0.5) * 16;
  for (let y = 0; y < size; y += 1)
    for (let x = 0; x < size; x += 1) {
      const sum = [0, 0, 0];
      let seen = 0;
      for (let part = 0; part < FINE * FINE; part += 1) {
        const fill = fillAt(point(x, part % FINE), point(y, Math.floor(part / FINE)), isFull);
        if (!fill) continue;
        seen += 1;
        channels(fill).forEach((one, at) => (sum[at] += one));
      }
      const at = y * (size * 4 + 1) + 1 + x * 4;
      sum.forEach((one, channel) => (rows[at + channel] = seen === 0 ? 0 : Math.round(one / seen)));
      rows[at + 3] = Math.round((255 * seen) / (FINE * FINE));
    }
  return pngOf(size, rows);
}

/** @see Portable Network Graphics (PNG) Specification, third edition, W3C: 8 bits a channel, colour with alpha. */
function pngOf(size, rows) {
  const chunk = (type, data) => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(data.length);
    sum.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, sum]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  head.set([8, 6, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}
