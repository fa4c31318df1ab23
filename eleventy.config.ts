import type { EleventyConfig } from '@11ty/eleventy';
import keeprow from './src/main/eleventyPlugin.ts';

/** The demo's report and nothing else. A site of your own takes it in with `keeprow/eleventy`, see README. */
export default async function configure(config: EleventyConfig): Promise<Record<string, unknown>> {
  await config.addPlugin(keeprow);
  return { dir: { input: 'site/assets', output: '_site' }, templateFormats: ['html'] };
}
