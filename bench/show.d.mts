export const FRAMES: number;
export const DATE: string;
export function writeShow(show: string, takes: number): number;
