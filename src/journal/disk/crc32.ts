import * as zlib from 'node:zlib';
import type { Crc32 } from '../lines.ts';

/** Reversed polynomial of CRC-32 (ISO 3309). */
const POLYNOMIAL = 0xedb88320;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ POLYNOMIAL : value >>> 1;
  return value;
});

/** For runtimes whose zlib has no `crc32` yet (Node before 20.15). */
export const tableCrc32: Crc32 = (bytes) => {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (crc >>> 8) ^ (TABLE[(crc ^ byte) & 0xff] ?? 0);
  return (crc ^ 0xffffffff) >>> 0;
};

export const crc32: Crc32 = zlib.crc32 ? (bytes) => zlib.crc32(bytes) : tableCrc32;
