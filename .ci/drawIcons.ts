/**
 * Draws the add-in's icons into assets/: woven wire behind a leaf that has slid half-way, in our own
 * green. Run by hand after a change: `tsx .ci/drawIcons.ts`.
 */
import { writeFileSync } from "node:fs";
import { deflateSync } from "node:zlib";

const sizes = [16, 20, 24, 32, 40, 48, 64, 80];

type Colour = readonly [red: number, green: number, blue: number];
const ground: Colour = [0x2f, 0x4f, 0x4a];
const wire: Colour = [0xb9, 0xd4, 0xcb];
const leaf: Colour = [0xff, 0xff, 0xff];

/** The colour at a point of the unit square, or `null` outside the rounded plate. */
function colourAt(x: number, y: number, size: number): Colour | null {
  const corner = 0.18;
  const dx = Math.max(Math.abs(x - 0.5) - (0.5 - corner), 0);
  const dy = Math.max(Math.abs(y - 0.5) - (0.5 - corner), 0);
  if (Math.hypot(dx, dy) > corner) return null;
  // The track across the top, and the leaf hanging from it over the left part.
  const isTrack = y > 0.16 && y < 0.25 && x > 0.12 && x < 0.88;
  const isLeaf = x > 0.18 && x < 0.5 && y > 0.3 && y < 0.86;
  const isFrame = isLeaf && !(x > 0.25 && x < 0.43 && y > 0.37 && y < 0.79);
  if (isTrack || isFrame) return leaf;
  if (y < 0.3 || y > 0.86 || x < 0.18 || x > 0.86) return ground;
  // Wires at 45 degrees; fewer and thicker where there are few pixels.
  const count = size < 24 ? 4 : 6;
  const thickness = size < 24 ? 0.3 : 0.24;
  const isWire = [x + y, x - y].some((along) => {
    const part = (((along * count) % 1) + 1) % 1;
    return Math.min(part, 1 - part) < thickness / 2;
  });
  return isWire ? wire : ground;
}

/** Each pixel is the mean of 8 by 8 points. */
function pixels(size: number): Buffer {
  const points = 8;
  const rows = Buffer.alloc(size * (1 + size * 4));
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      const sum = [0, 0, 0];
      let covered = 0;
      for (let point = 0; point < points * points; point++) {
        const x = (column + ((point % points) + 0.5) / points) / size;
        const y = (row + (Math.floor(point / points) + 0.5) / points) / size;
        const colour = colourAt(x, y, size);
        if (colour === null) continue;
        covered++;
        for (const [index, part] of colour.entries()) sum[index] = (sum[index] ?? 0) + part;
      }
      const at = row * (1 + size * 4) + 1 + column * 4;
      for (const [index, part] of sum.entries()) rows[at + index] = covered && part / covered;
      rows[at + 3] = (255 * covered) / (points * points);
    }
  }
  return rows;
}

/** A PNG with 8 bits for each of red, green, blue and opacity (ISO/IEC 15948). */
function png(size: number): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 6, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(pixels(size), { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(kind: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(kind, "latin1"), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  body.copy(framed, 4);
  framed.writeUInt32BE(checksum(body), body.length + 4);
  return framed;
}

/** CRC-32 as PNG has it. */
function checksum(data: Buffer): number {
  let rest = 0xffffffff;
  for (const byte of data) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  }
  return ~rest >>> 0;
}

for (const size of sizes) writeFileSync(`assets/icon-${size}.png`, png(size));
console.log(`Drew ${sizes.length} icons into assets/.`);
