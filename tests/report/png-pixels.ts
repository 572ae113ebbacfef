import { inflateSync } from 'node:zlib';

export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** `#rrggbb` of a pixel. */
  readonly at: (x: number, y: number) => string;
}

/** Reads an 8-bit RGB or RGBA picture without interlacing (PNG specification, W3C, sections 5 and 9). */
export function pngPixels(file: Buffer): Pixels {
  const chunks: Buffer[] = [];
  let [width, height, channels] = [0, 0, 3];
  for (let at = 8; at < file.length; ) {
    const length = file.readUInt32BE(at);
    const type = file.toString('latin1', at + 4, at + 8);
    const body = file.subarray(at + 8, at + 8 + length);
    if (type === 'IHDR') {
      width = body.readUInt32BE(0);
      height = body.readUInt32BE(4);
      channels = body[9] === 6 ? 4 : 3;
    }
    if (type === 'IDAT') chunks.push(body);
    at += length + 12;
  }
  const raw = inflateSync(Buffer.concat(chunks));
  const stride = width * channels;
  const data = Buffer.alloc(stride * height);
  for (let y = 0; y < height; y += 1) {
    const filter = raw[y * (stride + 1)] ?? 0;
    for (let i = 0; i < stride; i += 1) {
      const byte = raw[y * (stride + 1) + 1 + i] ?? 0;
      const left = i < channels ? 0 : (data[y * stride + i - channels] ?? 0);
      const up = y === 0 ? 0 : (data[(y - 1) * stride + i] ?? 0);
      const corner = y === 0 || i < channels ? 0 : (data[(y - 1) * stride + i - channels] ?? 0);
      const guess = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][filter] ?? 0;
      data[y * stride + i] = (byte + guess) & 255;
    }
  }
  return {
    width,
    height,
    at: (x, y) =>
      `#${data.toString('hex', y * stride + x * channels, y * stride + x * channels + 3)}`,
  };
}

function paeth(a: number, b: number, c: number): number {
  const p = a + b - c;
  const [pa, pb, pc] = [Math.abs(p - a), Math.abs(p - b), Math.abs(p - c)];
  if (pa <= pb && pa <= pc) return a;
  return pb <= pc ? b : c;
}
