/** A request that was not evaluated, with the reason in one plain sentence without a full stop. */
export interface Refused {
  readonly refused: string;
}

/** Whether a value is a refusal. */
export function isRefused<T extends object>(value: T | Refused): value is Refused {
  return "refused" in value;
}
