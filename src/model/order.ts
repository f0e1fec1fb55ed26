/** Shooting order on the 24-hour circle: from the day's call, else from the largest gap between takes. */

/** A take may roll shortly before the call time without being last of the day. */
const BEFORE_CALL_SECONDS = 3600;
const DAY_SECONDS = 86_400;

/**
 * Second of the day where the shooting day begins.
 *
 * @param starts seconds of the day at which takes start
 * @param callMinutes the day's call in minutes after midnight, when known
 */
export function beginOfShootingDay(starts: readonly number[], callMinutes: number | null): number {
  if (callMinutes !== null) return modulo(callMinutes * 60 - BEFORE_CALL_SECONDS, DAY_SECONDS);
  const sorted = [...starts].sort((a, b) => a - b);
  let begin = sorted[0] ?? 0;
  let largest = sorted.length === 0 ? 0 : modulo(begin - (sorted.at(-1) as number), DAY_SECONDS);
  for (let i = 1; i < sorted.length; i++) {
    const gap = (sorted[i] as number) - (sorted[i - 1] as number);
    if (gap > largest) {
      largest = gap;
      begin = sorted[i] as number;
    }
  }
  return begin;
}

/** Seconds since the shooting day began. */
export function secondsInto(begin: number, second: number): number {
  return modulo(second - begin, DAY_SECONDS);
}

/** Remainder that is never negative. */
export function modulo(a: number, n: number): number {
  return ((a % n) + n) % n;
}
