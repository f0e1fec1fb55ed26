/**
 * The hashes of a hash list: MD5, which everybody can check, and C4, which is SHA-512 in letters.
 *
 * @source SMPTE ST 2114 (C4 ID) as the ASC MHL reference program computes it: "c4" and the SHA-512 as a number in base 58,
 *   padded with 1 to 90 characters.
 */
import { createHash } from "node:crypto";

export interface FileHashes {
  /** 32 hexadecimal digits. */
  readonly md5: string;
  /** 90 characters, "c4" first. */
  readonly c4: string;
}

const LETTERS = "123456789ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz";

export function fileHashes(content: Uint8Array): FileHashes {
  return { md5: createHash("md5").update(content).digest("hex"), c4: c4Of(content) };
}

/** C4 of bytes or of UTF-8 text. */
export function c4Of(content: Uint8Array | string): string {
  return c4FromSha512(createHash("sha512").update(content).digest("hex"));
}

/** C4 from the 128 hexadecimal digits of a SHA-512. */
export function c4FromSha512(hex: string): string {
  let rest = BigInt(`0x${hex}`);
  let text = "";
  while (rest > 0n) {
    text = LETTERS.charAt(Number(rest % 58n)) + text;
    rest /= 58n;
  }
  return `c4${text.padStart(88, "1")}`;
}
