/** JSON with a fixed layout: keys stay in the order of the object, two spaces, LF at the end. No value may be undefined, NaN or infinite. */
export function stableJson(value: unknown): string {
  return `${JSON.stringify(value, refuseWhatJsonCannotHold, 2)}\n`;
}

/** Compact form with sorted keys, for hashing: equal content gives equal text. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (key, v) => {
    if (v !== null && typeof v === "object" && !Array.isArray(v)) {
      return Object.fromEntries(Object.entries(v as Record<string, unknown>).sort(([a], [b]) => (a < b ? -1 : 1)));
    }
    return refuseWhatJsonCannotHold(key, v);
  });
}

function refuseWhatJsonCannotHold(key: string, value: unknown): unknown {
  if (typeof value === "number" && !Number.isFinite(value)) {
    throw new TypeError(`"${key}" is ${value}, which JSON cannot hold`);
  }
  if (Object.is(value, -0)) return 0;
  return value;
}
