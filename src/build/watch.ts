/** Watches a show folder: what changes within a short time is one change, and one change is worked on at a time. */
import { basename, relative, sep } from "node:path";
import { watch as watchFiles } from "chokidar";
import { compareText } from "../core/finding.ts";

/** A copy or a save of an editor touches files several times within this, in milliseconds. */
const SETTLES_MS = 150;
/** Network volumes tell nobody of changes; they are looked at this often. */
const POLL_MS = 1000;

export interface WatchOptions {
  /** Looks at every file again and again instead of being told: for network volumes. */
  readonly poll: boolean;
  /** Names of the changed files relative to the folder, with `/`, in order. Not called again before it has ended. */
  onChange(files: readonly string[]): Promise<void>;
  /** The folder cannot be watched any more, or a change could not be worked on. */
  onFault(error: unknown): void;
}

export interface Watching {
  close(): Promise<void>;
}

/** Begins to watch, and comes back when every file that is there is known; what is there already is no change. */
export async function watchFolder(path: string, options: WatchOptions): Promise<Watching> {
  const queue = changeQueue(SETTLES_MS, options);
  const watcher = watchFiles(path, {
    ignoreInitial: true,
    followSymlinks: false,
    usePolling: options.poll,
    interval: POLL_MS,
    binaryInterval: POLL_MS,
    ignored: (file) => file !== path && isPassing(basename(file)),
  });
  watcher.on("all", (_event, file) => queue.add(relative(path, file).split(sep).join("/")));
  watcher.on("error", options.onFault);
  await new Promise<void>((ready) => watcher.once("ready", () => ready()));
  return {
    close: async () => {
      queue.close();
      await watcher.close();
    },
  };
}

/** What editors, file managers and copies in progress leave for a moment. */
function isPassing(name: string): boolean {
  return name.startsWith(".") || /~$|\.(?:swp|swx|tmp|part|crdownload)$/i.test(name);
}

export interface ChangeQueue {
  add(file: string): void;
  close(): void;
}

/** Gathers changes until none has come for `settlesMs`, and hands them on when the work on the ones before has ended. */
export function changeQueue(settlesMs: number, options: Pick<WatchOptions, "onChange" | "onFault">): ChangeQueue {
  const changed = new Set<string>();
  let timer: NodeJS.Timeout | undefined;
  let working = false;
  let closed = false;
  const later = (): void => {
    clearTimeout(timer);
    if (!closed) timer = setTimeout(() => void work(), settlesMs);
  };
  const work = async (): Promise<void> => {
    if (working || changed.size === 0) return;
    const files = [...changed].sort(compareText);
    changed.clear();
    working = true;
    try {
      await options.onChange(files);
    } catch (error) {
      options.onFault(error);
    }
    working = false;
    if (changed.size > 0) later();
  };
  return {
    add(file) {
      changed.add(file);
      if (!working) later();
    },
    close() {
      closed = true;
      clearTimeout(timer);
    },
  };
}
