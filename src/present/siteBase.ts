import type { Settings } from '../terms/settings.ts';

/** Address of the published site, ending in `/`; null where it is not set. */
export function siteBase({ publish }: Pick<Settings, 'publish'>): string | null {
  return publish.url === null ? null : `${publish.url.replace(/\/+$/, '')}/`;
}
