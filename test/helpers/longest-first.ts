/** Order of a run's files: those that take longest begin first, so that at the end no core waits for another's last long file. */
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** Names of files as their paths end, the longest first; the rest follows in the order that the program gives it. */
export function longestFirst(names: readonly string[]): typeof BaseSequencer {
  const rank = (file: TestSpecification): number => {
    const at = names.findIndex((name) => file.moduleId.endsWith(`/test/${name}.test.ts`));
    return at < 0 ? names.length : at;
  };
  return class extends BaseSequencer {
    override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
      return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
    }
  };
}
