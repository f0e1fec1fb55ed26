/**
 * Freezes a plain value and everything in it, and returns it. View models are frozen so that nothing can be computed
 * into them later, and because the site generator passes frozen objects by reference instead of copying them per page.
 */
export function deepFreeze<T>(value: T): T {
  if (value === null || typeof value !== "object" || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const inner of Object.values(value)) deepFreeze(inner);
  return value;
}
