/** Text of USD layers: values, attributes with time samples, dictionaries. */

/** Values by time code. A series whose samples are all alike is written as one value. */
export interface UsdSeries {
  readonly times: readonly number[];
  readonly values: readonly number[];
}

/** A string as USD quotes it. */
export function usdString(text: string): string {
  const escaped = text.replace(/[\\"]/g, "\\$&").replace(/\n/g, "\\n").replace(/\r/g, "\\r").replace(/\t/g, "\\t");
  return `"${escaped}"`;
}

/** A number as USD reads it; infinity is `inf`. */
export function usdNumber(value: number): string {
  if (value === Number.POSITIVE_INFINITY) return "inf";
  if (value === Number.NEGATIVE_INFINITY) return "-inf";
  return String(value + 0);
}

/** An attribute with a value for all times. `type` may begin with `custom`. */
export function usdAttribute(type: string, name: string, value: string): string {
  return `${type} ${name} = ${value}`;
}

/** An attribute from a series; empty without samples. */
export function usdSeries(type: string, name: string, series: UsdSeries): readonly string[] {
  const [first] = series.values;
  if (first === undefined) return [];
  if (series.values.every((value) => Object.is(value, first))) return [usdAttribute(type, name, usdNumber(first))];
  const samples = series.times.map((time, i) => `    ${time}: ${usdNumber(series.values[i] as number)},`);
  return [`${type} ${name}.timeSamples = {`, ...samples, "}"];
}

/** Entries of a dictionary such as customData. */
export function usdDictionary(
  name: string,
  entries: Readonly<Record<string, string | number | readonly number[] | null>>,
): readonly string[] {
  const lines = Object.entries(entries).flatMap(([key, value]) => {
    if (value === null) return [];
    if (typeof value === "string") return [`    string ${key} = ${usdString(value)}`];
    if (typeof value === "number") return [`    double ${key} = ${usdNumber(value)}`];
    return [`    int[] ${key} = [${value.join(", ")}]`];
  });
  return [`${name} = {`, ...lines, "}"];
}

/** Lines moved in by a level. */
export function indented(lines: readonly string[]): readonly string[] {
  return lines.map((line) => `    ${line}`);
}

/** An identifier: letters, digits and underscores, not beginning with a digit. */
export function usdName(text: string): string {
  const name = text.replace(/[^A-Za-z0-9_]/g, "_");
  return /^[A-Za-z_]/.test(name) ? name : `_${name}`;
}
