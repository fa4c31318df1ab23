import { addresses } from '../src/terms/addresses.ts';
import type { JSX } from 'preact';
import { render } from 'preact-render-to-string';
import { ROOT } from '../src/present/growersWords.ts';
import { siteBase } from '../src/present/siteBase.ts';
import { writeUnits } from '../src/present/units.ts';
import type { Page, FrameContent } from './content.ts';
import { Layout } from './layout.tsx';

type Links = readonly (readonly [address: string, name: string])[];

/** The doors: front page, last season, next season, varieties, handout, figures, and the grower's own pages. */
function doors(content: FrameContent): Links {
  const { frame, bench } = content.writing.words;
  const { nav: say } = bench;
  const last = content.seasons.at(-1)?.season;
  return [
    [addresses.front, frame.nav.front],
    ...(last ? [[addresses.season(last.key), say.season(String(last.year))] as const] : []),
    ...(content.ongoing
      ? [[addresses.season(content.ongoing.key), bench.ongoing.title(String(content.ongoing.year))] as const]
      : []),
    ...(content.next ? [[addresses.nextSeason, say.next(String(content.next.season))] as const] : []),
    [addresses.varieties, say.varieties],
    ...(last ? [[addresses.handout(last.key), say.handout] as const] : []),
    [addresses.methods, say.about],
    ...content.ownPages.map(({ key, title }) => [addresses.own(key), title] as const),
  ];
}

function feet({ next, writing: { words } }: FrameContent): Links {
  const { nav: say } = words.bench;
  return [
    [addresses.seasons, say.seasons],
    ...(next ? [[addresses.weights, say.weights] as const] : []),
    [addresses.glossary, say.words],
    [addresses.data, say.data],
    [addresses.notes, say.notes],
  ];
}

interface PageParts {
  /** What lies on the cloth, the page's heading with it; without it the page has its title as heading. */
  readonly hero?: (root: string) => JSX.Element;
  readonly isSheet?: boolean;
  /** True for a page that stands by itself, without the site about it. */
  readonly isAlone?: boolean;
}

export function page(
  content: FrameContent,
  address: string,
  title: string,
  body: (root: string) => JSX.Element,
  { hero, isSheet = false, isAlone = false }: PageParts = {},
): Page {
  const root = './' + '../'.repeat(address.split('/').length - 1);
  const { settings } = content.trial;
  const make = (): string => {
    const html = render(
      <Layout
        title={title}
        trialTitle={settings.title}
        language={settings.language}
        root={root}
        pages={isAlone ? [] : doors(content)}
        feet={isAlone ? [] : feet(content)}
        words={content.writing.words.frame}
        url={siteBase(settings)}
        address={address}
        units={settings.units}
        hero={hero ? hero(root) : null}
        isSheet={isSheet}
      >
        {body(root)}
      </Layout>,
    );
    return writeUnits(`<!doctype html>\n${html}\n`);
  };
  return {
    address,
    title,
    get html() {
      return make();
    },
  };
}

export function percent(content: FrameContent): string {
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
