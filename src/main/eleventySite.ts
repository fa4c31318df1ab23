import type { Page } from '../../site/content.ts';

/** The little of Eleventy that is used; the package has no types. */
export interface EleventyConfig {
  readonly addTemplate: (path: string, content: string, data: Record<string, unknown>) => void;
  readonly setUseGitIgnore: (use: boolean) => void;
  readonly setTemplateFormats: (formats: readonly string[]) => void;
  readonly setDataFileSuffixes: (suffixes: readonly string[]) => void;
  readonly setDataDirectory: (folder: string) => void;
  readonly addPassthroughCopy: (from: Record<string, string>) => void;
}

/** Hands finished pages to Eleventy as virtual templates; nothing of the trial folder is run as a template. */
export function configureEleventy(config: EleventyConfig, pages: readonly Page[]): void {
  config.setUseGitIgnore(false);
  config.setTemplateFormats(['html']);
  config.setDataFileSuffixes([]);
  config.setDataDirectory('__none__');
  for (const { address, html } of pages) {
    const name = address === '' ? 'index' : address.replace(/\/$/, '').replaceAll('/', '__');
    config.addTemplate(`keeprow-pages/${name}.html`, html, { permalink: `${address}index.html` });
  }
}
