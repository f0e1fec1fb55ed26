/** Lines to write on where the last page has room: what is found out later, on the paper that is signed. */
import { paragraph, sectionHead } from "../block.ts";
import { PRINT } from "../palette.ts";
import { type Report, TYPE } from "../report.ts";
import { artifact } from "../tags.ts";

/** Points from one line to the next: a hand needs 8 mm. */
const LINE = 23;
/** Fewer are no room to write in. */
const LEAST_LINES = 4;
/** Points of the head and its sentence. */
const HEAD_HEIGHT = 60;

export function handNotes(report: Report): void {
  const { doc, ink, flow } = report;
  if (flow.left() < HEAD_HEIGHT + LEAST_LINES * LINE) return;
  const section = sectionHead(report, "Notes by hand");
  const says = "What is written here stays on this paper: enter corrections in the show folder too, and the next build has them.";
  paragraph(report, section, says, { style: TYPE.label, after: 0 });
  const { left, right, bottom } = flow.sheet;
  const count = Math.floor(flow.left() / LINE);
  artifact(doc, () => {
    for (let i = 1; i <= count; i++) ink.line(left, flow.y + i * LINE, right, flow.y + i * LINE, PRINT.rule);
  });
  flow.y = bottom;
}
