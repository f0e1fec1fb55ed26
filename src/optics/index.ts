export * from "./depth-of-field.ts";
export * from "./exposure.ts";
export * from "./field-of-view.ts";
export * from "./formulas.ts";
