/** A PNG of 8 bits a channel by hand: signature, header, one data chunk, end. */
import { constants, deflateSync } from "node:zlib";

const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

/** @param {Uint8Array} bytes */
function crc32(bytes) {
  let c = 0xffffffff;
  for (const byte of bytes) c = TABLE[(c ^ byte) & 255] ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc32(body), body.length + 4);
  return out;
}

const paeth = (a, b, c) => {
  const [pa, pb, pc] = [Math.abs(b - c), Math.abs(a - c), Math.abs(a + b - 2 * c)];
  if (pa <= pb && pa <= pc) return a;
  return pb <= pc ? b : c;
};

/**
 * @param {number} width
 * @param {number} height
 * @param {1 | 3} channels grey or red, green, blue
 * @param {Uint8Array} pixels row by row
 * @returns {Uint8Array}
 */
export function png(width, height, channels, pixels) {
  const stride = width * channels;
  const raw = Buffer.alloc((stride + 1) * height);
  for (let y = 0; y < height; y++) {
    raw[y * (stride + 1)] = 4;
    for (let x = 0; x < stride; x++) {
      const at = y * stride + x;
      const left = x >= channels ? pixels[at - channels] : 0;
      const up = y > 0 ? pixels[at - stride] : 0;
      const corner = x >= channels && y > 0 ? pixels[at - stride - channels] : 0;
      raw[y * (stride + 1) + 1 + x] = (pixels[at] - paeth(left, up, corner)) & 255;
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, channels === 1 ? 0 : 2, 0, 0, 0], 8);
  // run lengths only: the string search of deflate differs between builds of zlib, and the same input must give the same bytes
  const data = deflateSync(raw, { level: 9, memLevel: 9, strategy: constants.Z_RLE });
  return Buffer.concat([
    Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]),
    chunk("IHDR", header),
    chunk("IDAT", data),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}
