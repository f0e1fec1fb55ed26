/** Ids that are the same on every build: name-based UUIDs. */
import { createHash } from "node:crypto";

/**
 * UUID of a name in a name space, as a URN.
 * @source RFC 9562 5.5 (version 5, SHA-1)
 * @example uuidUrn("6ba7b810-9dad-11d1-80b4-00c04fd430c8", "www.example.com") // "urn:uuid:2ed6657d-e927-568b-95e1-2665a8aea6a2"
 */
export function uuidUrn(nameSpace: string, name: string): string {
  const hash = createHash("sha1")
    .update(Buffer.from(nameSpace.replaceAll("-", ""), "hex"))
    .update(name, "utf8")
    .digest()
    .subarray(0, 16);
  hash[6] = ((hash[6] as number) & 0x0f) | 0x50;
  hash[8] = ((hash[8] as number) & 0x3f) | 0x80;
  const hex = hash.toString("hex");
  return `urn:uuid:${[hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-")}`;
}

/** The name space for URLs and URNs. */
const URLS = "6ba7b811-9dad-11d1-80b4-00c04fd430c8";

/** Id of a take's lens data on a day of a show. */
export function takeId(showCode: string, date: string, address: string): string {
  return uuidUrn(URLS, `urn:lens-daybook:${showCode}:${date}:${address}`);
}

/** Id of one frame of it. */
export function sampleId(showCode: string, date: string, address: string, frame: number): string {
  return uuidUrn(URLS, `urn:lens-daybook:${showCode}:${date}:${address}:${frame}`);
}
