/**
 * What a page remembers in the reader's browser. All local files share one storage, so keys carry the show's prefix; a
 * browser may refuse storage to local files, and then nothing is remembered.
 */
export interface Store {
  get(name: string): string | null;
  set(name: string, value: string | null): void;
}

export function pageStore(root: HTMLElement): Store {
  const prefix = root.dataset.store ?? "lens-daybook";
  return {
    get(name) {
      try {
        return localStorage.getItem(`${prefix}.${name}`);
      } catch {
        return null;
      }
    },
    set(name, value) {
      try {
        if (value === null) localStorage.removeItem(`${prefix}.${name}`);
        else localStorage.setItem(`${prefix}.${name}`, value);
      } catch {
        // Nothing is remembered: the choice holds for this page.
      }
    },
  };
}
