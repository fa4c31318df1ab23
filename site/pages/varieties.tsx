import { addresses } from '../../src/terms/addresses.ts';
import { StandPicture } from '../bench/fruit.tsx';
import { CrossLinks } from './crossLinks.tsx';
import { Verdict } from '../bench/signs.tsx';
import type { CrossContent, Page, StandContent } from '../content.ts';
import { to } from '../layout.tsx';
import { page } from '../page.tsx';

/** Every variety ever grown, by class and from A to Z, with its fruit and its verdict; a script filters by name. */
export function varietiesPage(content: StandContent & CrossContent): Page {
  const { trial, stands, writing } = content;
  const { bench } = writing.words;
  const say = bench.varieties;
  const collator = new Intl.Collator(trial.settings.language);
  const all = [...stands.values()].toSorted((a, b) => collator.compare(a.variety.name, b.variety.name));
  const classes = [...new Set(all.map(({ variety }) => variety.classId))];
  const order = [...trial.settings.classes.keys()];
  const sorted = classes.toSorted((a, b) => order.indexOf(a) - order.indexOf(b));
  return page(content, addresses.varieties, say.title, (root) => (
    <>
      <p>{say.note(all.length)}</p>
      <p class="filter" id="filter" data-label={say.filter} data-none={say.none}></p>
      {sorted.map((classId) => (
        <section>
          <h2>{trial.settings.classes.get(classId)?.name ?? classId}</h2>
          <ul class="list" data-filter>
            {all
              .filter(({ variety }) => variety.classId === classId)
              .map((stand) => ({ stand, ...stand }))
              .map(({ stand, variety, standing, shareText, lastGrown }) => (
                <li data-name={variety.name.toLowerCase()}>
                  <span class="stand">
                    <StandPicture stand={stand} root={root} prefix="all" />
                  </span>
                  <div>
                    <a class="nm" href={to(root, addresses.variety(variety.id))}>
                      {variety.name}
                    </a>
                    <Verdict standing={standing} word={bench.standing[standing]} size={0.8} />{' '}
                    <span class="s num m">
                      {shareText === null ? '' : `${shareText} · `}
                      {lastGrown === null ? say.never : say.lastGrown(String(lastGrown))}
                    </span>
                  </div>
                </li>
              ))}
          </ul>
        </section>
      ))}
      <CrossLinks content={content} root={root} isShort />
    </>
  ));
}
