import { addresses } from '../../src/terms/addresses.ts';
import type { Page, FrameContent } from '../content.ts';
import { page } from '../page.tsx';

/** The words of the trade that the pages use. */
export function glossaryPage(content: FrameContent): Page {
  const { glossary: say } = content.writing.words;
  const collator = new Intl.Collator(content.trial.settings.language);
  return page(content, addresses.glossary, say.title, () => (
    <dl class="glossary">
      {say.terms
        .toSorted(([a], [b]) => collator.compare(a, b))
        .map(([term, meaning]) => (
          <>
            <dt>{term}</dt>
            <dd>{meaning}</dd>
          </>
        ))}
    </dl>
  ));
}
