/** The take sheet in the browser: moves through the take frame by frame. Its data come from a script of their own. */
import { openTake, type TakeRecord } from "../format/take-record.ts";
import { startTake } from "./take/start.ts";

Object.assign(globalThis, {
  lensDaybookTake: (record: TakeRecord) => startTake(document, openTake(record)),
});
