/** The package carries no types: only what the tests ask of it. */
declare module "smpte-timecode" {
  export default function Timecode(
    frame: number | string,
    rate: readonly [number, number],
    dropFrame: boolean,
  ): { readonly frameCount: number; toString(): string };
}
