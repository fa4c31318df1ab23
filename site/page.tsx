import type { JSX } from 'preact';
import { render } from 'preact-render-to-string';
import type { Variety } from '../src/terms/trial.ts';
import type { Page, SiteContent } from './content.ts';
import { Layout, to } from './layout.tsx';

function navigation({ next, writing: { words } }: SiteContent): readonly (readonly [string, string])[] {
  const { nav } = words.frame;
  return [
    ['', nav.front],
    ...(next
      ? [['next-season/', words.nextSeason.nav] as const, ['your-weights/', words.yourWeights.nav] as const]
      : []),
    ['seasons/', nav.seasons],
    ['data/', nav.data],
    ['data-notes/', nav.notes],
    ['methods/', nav.methods],
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
    >
      {body(root)}
    </Layout>,
  );
  return { address, html: `<!doctype html>\n${html}\n` };
}

export function percent(content: SiteContent): string {
  return `${content.writing.number(content.trial.settings.interval * 100, 0)} %`;
}

export function Words({ html }: { readonly html: string | undefined }): JSX.Element | null {
  return html === undefined ? null : <div dangerouslySetInnerHTML={{ __html: html }} />;
}

export function link(root: string, variety: Variety): JSX.Element {
  return <a href={to(root, `varieties/${variety.id}/`)}>{variety.name}</a>;
}
