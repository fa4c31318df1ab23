import type { ComponentChildren, JSX } from 'preact';
import type { Words } from '../src/present/words/en/index.ts';

/** What every page is given: its own words, and the way back to the site's root. */
export interface PageFrame {
  readonly title: string;
  readonly trialTitle: string;
  readonly language: string;
  /** `./` on the front page, `../` one folder down: links are relative so that the site works from a memory stick. */
  readonly root: string;
  /** Pages of the navigation: address and name. */
  readonly pages: readonly (readonly [address: string, name: string])[];
  /** Pages at the foot. */
  readonly feet: PageFrame['pages'];
  /** What lies on the dark cloth, with the page's heading; null for a page of text. */
  readonly hero: JSX.Element | null;
  /** True for a page that is made to be printed. */
  readonly isSheet: boolean;
  readonly words: Words['frame'];
  /** Address of the published site, ending in `/`; null where it is not set. */
  readonly url: string | null;
  readonly address: string;
  readonly units: 'metric' | 'us';
  readonly children: ComponentChildren;
}

export const CSP =
  "default-src 'none'; style-src 'self'; img-src 'self' data:; script-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'";

/** The address of a page from the root, written so that it works from `file://`. */
export function to(root: string, page: string): string {
  return `${root}${page}index.html`;
}

function Head({ title, trialTitle, root, words, url, address }: PageFrame): JSX.Element {
  const full = title === trialTitle ? title : `${title} · ${trialTitle}`;
  return (
    <head>
      <meta charSet="utf-8" />
      <meta http-equiv="Content-Security-Policy" content={CSP} />
      <meta name="viewport" content="width=device-width, initial-scale=1" />
      <title>{full}</title>
      <meta name="description" content={words.description(full)} />
      <link rel="icon" type="image/svg+xml" href={`${root}assets/icon.svg`} />
      <meta property="og:title" content={full} />
      <meta property="og:type" content="article" />
      {url === null ? null : (
        <>
          <link rel="canonical" href={`${url}${address}`} />
          <meta property="og:url" content={`${url}${address}`} />
          <meta property="og:image" content={`${url}og.png`} />
          <link rel="alternate" type="application/atom+xml" title={words.feed} href={`${root}feed.xml`} />
        </>
      )}
      <link rel="stylesheet" href={`${root}assets/keeprow.css`} />
      <script src={`${root}assets/site.js`} defer></script>
    </head>
  );
}

/** The doors of the masthead, and the pages at the foot. */
function Links({ root, pages, address }: Pick<PageFrame, 'root' | 'address'> & { readonly pages: PageFrame['pages'] }) {
  return (
    <ul>
      {pages.map(([page, name]) => (
        <li>
          <a href={to(root, page)} aria-current={page === address ? 'page' : undefined}>
            {name}
          </a>
        </li>
      ))}
    </ul>
  );
}

export function Layout(frame: PageFrame): JSX.Element {
  const { title, trialTitle, language, root, pages, feet, words, units, hero, isSheet, address, children } = frame;
  return (
    <html lang={language}>
      <Head {...frame} />
      <body class={isSheet ? 'sheet' : undefined}>
        <a class="skip" href="#content">
          {words.skip}
        </a>
        <header class="wrap">
          <div class="top">
            <a class="club" href={to(root, '')}>
              {trialTitle}
            </a>
            <nav aria-label={words.pages}>
              <Links root={root} pages={pages} address={address} />
            </nav>
          </div>
        </header>
        <main id="content">
          {hero ? (
            <>
              <div class="cloth">
                <div class="wrap">{hero}</div>
              </div>
              <div class="wrap">{children}</div>
            </>
          ) : (
            <div class="wrap plainhead">
              <h1>{title}</h1>
              {children}
            </div>
          )}
        </main>
        <footer class="wrap">
          <p>{words.footer}</p>
          <nav aria-label={words.morePages}>
            <Links root={root} pages={feet} address={address} />
          </nav>
          <button
            type="button"
            id="unit-switch"
            hidden
            data-here={units === 'us' ? words.toMetric : words.toUs}
            data-other={units === 'us' ? words.toUs : words.toMetric}
          ></button>
          <p id="mark" role="status" data-help={words.marks}></p>
        </footer>
      </body>
    </html>
  );
}
