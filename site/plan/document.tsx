import type { ComponentChildren } from 'preact';
import { render } from 'preact-render-to-string';
import { writeUnits } from '../../src/present/units.ts';
import type { PlanWords } from '../../src/present/plan/sentences.ts';

/** A page of the plan as HTML: no navigation, nothing that loads from elsewhere. */
export function planHtml(
  words: PlanWords,
  title: string,
  kind: 'index' | 'sheets',
  children: ComponentChildren,
): string {
  const { settings } = words.trial;
  const html = render(
    <html lang={settings.language}>
      <head>
        <meta charSet="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="robots" content="noindex" />
        <title>{`${title} · ${settings.title}`}</title>
        <link rel="stylesheet" href="keeprow.css" />
        <link rel="stylesheet" href="plan.css" />
      </head>
      <body class={`plan ${kind} ${settings.plan.paper.toLowerCase()}`}>
        <main>
          <div class="wrap">{children}</div>
        </main>
      </body>
    </html>,
  );
  return writeUnits(`<!doctype html>\n${html}\n`);
}
