/** Finds drafts by clip, by slate and take, and by camera. */
import { sameName } from "./address.ts";
import type { TakeDraft } from "./draft.ts";

/** Finds drafts by clip, by slate and take, and by camera. */
export class DraftIndex {
  readonly drafts: readonly TakeDraft[];
  readonly #byClip = new Map<string, number[]>();
  readonly #bySlate = new Map<string, number[]>();
  readonly #byCamera = new Map<string, number[]>();

  constructor(drafts: readonly TakeDraft[]) {
    this.drafts = drafts;
    drafts.forEach((draft, i) => {
      if (draft.clip !== null) add(this.#byClip, sameName(draft.clip), i);
      add(this.#bySlate, slateKey(draft.slate, draft.take), i);
      add(this.#byCamera, sameName(draft.camera), i);
    });
  }

  clip(clip: string): readonly number[] {
    return this.#byClip.get(sameName(clip)) ?? [];
  }

  slateAndTake(slate: string, take: string, camera: string | null): readonly number[] {
    const all = this.#bySlate.get(slateKey(slate, take)) ?? [];
    return camera === null ? all : all.filter((i) => sameName((this.drafts[i] as TakeDraft).camera) === sameName(camera));
  }

  camera(camera: string): readonly number[] {
    return this.#byCamera.get(sameName(camera)) ?? [];
  }
}

function add(map: Map<string, number[]>, key: string, value: number): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}

function slateKey(slate: string, take: string): string {
  return `${sameName(slate)}\u0000${sameName(take).replace(/\s+/g, "")}`;
}
