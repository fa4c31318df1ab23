import { addresses } from '../src/terms/addresses.ts';
import type { JSX } from 'preact';
import { render } from 'preact-render-to-string';
import { ROOT } from '../src/present/growersWords.ts';
import { siteBase } from '../src/present/siteBase.ts';
import { writeUnits } from '../src/present/units.ts';
import type { Page, SiteContent } from './content.ts';
import { Layout } from './layout.tsx';

function navigation({ next, writing: { words } }: SiteContent): readonly (readonly [string, string])[] {
  const { nav } = words.frame;
  return [
    [addresses.front, nav.front],
    ...(next
      ? [[addresses.nextSeason, words.nextSeason.nav] as const, [addresses.weights, words.yourWeights.nav] as const]
      : []),
    [addresses.seasons, nav.seasons],
    [addresses.data, nav.data],
    [addresses.notes, nav.notes],
    [addresses.methods, nav.methods],
    [addresses.glossary, nav.glossary],
  ];
}

export function page(content: SiteContent, address: string, title: string, body: (root: string) => JSX.Element): Page {
  const root = './' + '../'.repeat(address.split('/').length - 1);
  const { settings } = content.trial;
  const html = render(
    <Layout
      title={title}
      trialTitle={settings.title}
      language={settings.language}
      root={root}
      pages={navigation(content)}
      words={content.writing.words.frame}
      url={siteBase(settings)}
      address={address}
      units={settings.units}
    >
      {body(root)}
    </Layout>,
  );
  return { address, title, html: writeUnits(`<!doctype html>\n${html}\n`) };
}

export function percent(content: SiteContent): string {
  return content.writing.percent(content.trial.settings.interval);
}

export function Words({
  html,
  root,
}: {
  readonly html: string | undefined;
  readonly root: string;
}): JSX.Element | null {
  return html === undefined ? null : (
    <div class="words" dangerouslySetInnerHTML={{ __html: html.replaceAll(ROOT, root) }} />
  );
}
