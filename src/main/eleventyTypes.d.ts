/** The little of Eleventy that is used; the package has no types. */
declare module '@11ty/eleventy' {
  /** What a plugin is given. */
  export interface EleventyConfig {
    readonly addTemplate: (
      path: string,
      content: string | { readonly render: () => string },
      data: Record<string, unknown>,
    ) => void;
    readonly addWatchTarget: (path: string, options: { readonly resetConfig: boolean }) => void;
    readonly addPlugin: <O>(
      plugin: (config: EleventyConfig, options?: O) => Promise<void>,
      options?: O,
    ) => Promise<void>;
    readonly on: (
      event: 'eleventy.after',
      then: (built: { readonly directories: { readonly output: string } }) => void,
    ) => void;
    readonly setUseGitIgnore: (use: boolean) => void;
    readonly setTemplateFormats: (formats: readonly string[]) => void;
    readonly setDataFileSuffixes: (suffixes: readonly string[]) => void;
    readonly setDataDirectory: (folder: string) => void;
  }

  export default class Eleventy {
    constructor(
      input: string,
      output: string,
      options: {
        quietMode: boolean;
        configPath: string;
        loader: 'esm';
        config: (config: EleventyConfig) => void | Promise<void>;
      },
    );
    initializeConfig(overrides: Record<string, unknown>): Promise<void>;
    disableLogger(): void;
    init(): Promise<void>;
    write(): Promise<void>;
  }
}
