import type { ComponentChildren, JSX } from 'preact';
import type { Words } from '../src/present/words/english.ts';

/** What every page is given: its own words, and the way back to the site's root. */
export interface PageFrame {
  readonly title: string;
  readonly trialTitle: string;
  readonly language: string;
  /** `./` on the front page, `../` one folder down: links are relative so that the site works from a memory stick. */
  readonly root: string;
  /** Pages of the navigation: address and name. */
  readonly pages: readonly (readonly [address: string, name: string])[];
  readonly words: Words['frame'];
  readonly children: ComponentChildren;
}

const CSP =
  "default-src 'none'; style-src 'self'; img-src 'self' data:; script-src 'self'; base-uri 'none'; form-action 'none'";

/** The address of a page from the root, written so that it works from `file://`. */
export function to(root: string, page: string): string {
  return `${root}${page}index.html`;
}

export function Layout({ title, trialTitle, language, root, pages, words, children }: PageFrame): JSX.Element {
  return (
    <html lang={language}>
      <head>
        <meta charSet="utf-8" />
        <meta http-equiv="Content-Security-Policy" content={CSP} />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{title === trialTitle ? title : `${title} · ${trialTitle}`}</title>
        <link rel="stylesheet" href={`${root}assets/keeprow.css`} />
      </head>
      <body>
        <div class="page">
          <a class="skip" href="#content">
            {words.skip}
          </a>
          <header>
            <strong>{trialTitle}</strong>
            <nav aria-label={words.pages}>
              <ul>
                {pages.map(([page, name]) => (
                  <li>
                    <a href={to(root, page)}>{name}</a>
                  </li>
                ))}
              </ul>
            </nav>
          </header>
          <main id="content">
            <h1>{title}</h1>
            {children}
          </main>
          <footer>
            <p>{words.footer}</p>
          </footer>
        </div>
      </body>
    </html>
  );
}
