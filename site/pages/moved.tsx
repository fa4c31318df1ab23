import { addresses } from '../../src/terms/addresses.ts';
import { render } from 'preact-render-to-string';
import type { Variety } from '../../src/terms/trial.ts';
import type { Page, FrameContent } from '../content.ts';
import { CSP } from '../layout.tsx';

/** A page at a variety's former address that leads to the present one, without a script and from a memory stick. */
export function movedPage(content: FrameContent, variety: Variety, former: string): Page {
  const to = `../${variety.id}/index.html`;
  const text = content.writing.words.variety.movedTo(variety.name);
  const html = render(
    <html lang={content.trial.settings.language}>
      <head>
        <meta charSet="utf-8" />
        <meta http-equiv="Content-Security-Policy" content={CSP} />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta http-equiv="refresh" content={`0; url=${to}`} />
        <link rel="canonical" href={to} />
        <link rel="stylesheet" href="../../assets/keeprow.css" />
        <title>{variety.name}</title>
      </head>
      <body>
        <main class="page">
          <h1>{variety.name}</h1>
          <p>
            {text} <a href={to}>{variety.name}</a>
          </p>
        </main>
      </body>
    </html>,
  );
  return { address: addresses.variety(former), title: variety.name, html: `<!doctype html>\n${html}\n` };
}
