/** The real terminal. */
import { readFileSync } from "node:fs";
import type { Io, TextStream } from "./io.ts";

export function processIo(): Io {
  return {
    out: textStream(process.stdout),
    err: textStream(process.stderr),
    env: process.env,
    cwd: process.cwd(),
    now: () => performance.now(),
    readInput: () => readFileSync(0),
    onInterrupt(callback) {
      process.on("SIGINT", callback);
      return () => process.off("SIGINT", callback);
    },
    exit: (code) => process.exit(code),
  };
}

/** A reader such as `head` may close the pipe early: then the work goes on and the rest of the text is dropped. */
function textStream(stream: NodeJS.WriteStream): TextStream {
  let open = true;
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (open && error.code !== "EPIPE" && stream !== process.stderr)
      process.stderr.write(`the output cannot be written: ${error.message}\n`);
    open = false;
  });
  return {
    write(text) {
      if (open) stream.write(text);
    },
    isTerminal: stream.isTTY === true,
    columns: stream.columns ?? 80,
  };
}
