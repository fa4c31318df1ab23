/** The little of Eleventy that is used; the package has no types. */
declare module '@11ty/eleventy' {
  import type { EleventyConfig } from './eleventySite.ts';

  export default class Eleventy {
    constructor(
      input: string,
      output: string,
      options: { quietMode: boolean; configPath: string; loader: 'esm'; config: (config: EleventyConfig) => void },
    );
    initializeConfig(overrides: Record<string, unknown>): Promise<void>;
    disableLogger(): void;
    init(): Promise<void>;
    write(): Promise<void>;
  }
}
