import { existsSync } from 'node:fs';
import { configureEleventy } from './src/main/eleventySite.ts';
import type { EleventyConfig } from './src/main/eleventySite.ts';
import { makePages } from './src/main/makePages.ts';

/** The same configuration as `keeprow build`, for those who run Eleventy themselves. */
export default async function configure(config: EleventyConfig): Promise<Record<string, unknown>> {
  if (!existsSync('data')) throw new Error('run Eleventy from a trial folder');
  const { pages } = await makePages('.');
  configureEleventy(config, pages);
  config.addPassthroughCopy({ 'site/assets': 'assets', 'dist/assets': 'assets' });
  return { dir: { input: 'content', output: '_site' }, htmlTemplateEngine: false, markdownTemplateEngine: false };
}
