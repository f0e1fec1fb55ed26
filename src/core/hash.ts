import { createHash } from "node:crypto";

/** SHA-256 of bytes or UTF-8 text as 64 hexadecimal digits. */
export function sha256(content: Uint8Array | string): string {
  return createHash("sha256").update(content).digest("hex");
}

/** SHA-256 of bytes that come one stretch after the other. */
export function growingHash(): { add(bytes: Uint8Array): void; hex(): string } {
  const hash = createHash("sha256");
  return { add: (bytes) => void hash.update(bytes), hex: () => hash.digest("hex") };
}
