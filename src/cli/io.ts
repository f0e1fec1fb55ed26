/** The terminal as the commands see it. Tests pass one that remembers what was written. */
export interface TextStream {
  write(text: string): void;
  readonly isTerminal: boolean;
  /** Width in characters; 80 when nobody says. */
  readonly columns: number;
}

export interface Io {
  readonly out: TextStream;
  readonly err: TextStream;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Absolute path of the working directory. */
  readonly cwd: string;
  /** Milliseconds from any start, for durations. */
  now(): number;
  /** Everything that is piped in, for the file name `-`. */
  readInput(): Uint8Array;
  /** Calls back when the user interrupts; gives back what ends the waiting. */
  onInterrupt(callback: () => void): () => void;
  /** Ends the process at once. */
  exit(code: number): never;
}

/** Exit codes: part of the contract with scripts that call the command. */
export const EXIT = { fine: 0, dataErrors: 1, usage: 2, fault: 70, interrupted: 130 } as const;
