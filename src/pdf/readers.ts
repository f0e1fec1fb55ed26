/** The readers that a PDF of their own can be asked for. */
export const READERS = ["editorial", "vfx", "production"] as const;

export type Reader = (typeof READERS)[number];
