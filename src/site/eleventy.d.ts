/** The small part of the site generator that is used here; the package has no types of its own. */
declare module "@11ty/eleventy" {
  export interface EleventyConfig {
    readonly ignores: Set<string>;
    readonly benchmarkManager: { getAll(): Record<string, { readonly logger: { overrideLogger(logger: unknown): void } }> };
    setTemplateFormats(formats: readonly string[]): void;
    setInputDirectory(folder: string): void;
    setOutputDirectory(folder: string): void;
    setIncludesDirectory(folder: string): void;
    setDataDirectory(folder: string): void;
    setUseGitIgnore(use: boolean): void;
    setQuietMode(quiet: boolean): void;
    setLibrary(engine: string, library: unknown): void;
    addTransform(name: string, transform: (page: string) => string): void;
    addGlobalData(name: string, value: unknown): void;
    on(event: string, listener: (argument: unknown) => unknown): void;
  }
  export interface EleventyOptions {
    readonly configPath?: string | null;
    readonly source?: "cli" | "script";
    readonly quietMode?: boolean;
    readonly config?: (config: EleventyConfig) => void | Promise<void>;
  }
  export interface EleventyResult {
    readonly inputPath: string;
    readonly outputPath: string | false;
  }
  export class Eleventy {
    constructor(input: string, output: string, options: EleventyOptions);
    disableLogger(): void;
    init(): Promise<void>;
    write(): Promise<readonly [unknown, readonly EleventyResult[]]>;
  }
}

declare module "nunjucks" {
  export class FileSystemLoader {
    constructor(folders: string | readonly string[], options?: { readonly noCache?: boolean; readonly watch?: boolean });
  }
  export class Environment {
    constructor(
      loader: FileSystemLoader,
      options: {
        readonly autoescape: boolean;
        readonly throwOnUndefined: boolean;
        readonly trimBlocks: boolean;
        readonly lstripBlocks: boolean;
      },
    );
    render(name: string, context: object): string;
    readonly extensions: Readonly<Record<string, unknown>>;
    removeExtension(name: string): void;
  }
  const nunjucks: { readonly Environment: typeof Environment; readonly FileSystemLoader: typeof FileSystemLoader };
  export default nunjucks;
}
