import { addresses } from '../src/terms/addresses.ts';
import type { JSX } from 'preact';
import { nameOf } from '../src/present/nextSeason/source.ts';
import type { AdviceWords } from '../src/present/nextSeason/varietyAdvice.ts';
import type { FrameContent } from './content.ts';
import { Stake } from './bench/signs.tsx';
import { to } from './layout.tsx';

/** A verdict with its share, its reasons and its doubts. */
export function Advice({ advice }: { readonly advice: AdviceWords }): JSX.Element {
  return (
    <div class="advice">
      <p>
        <span class={`v ${advice.verdict}`}>
          <Stake standing={advice.verdict} size={0.8} />
        </span>{' '}
        {advice.sentence}
      </p>
      <ul>
        {advice.reasons.map(({ text }) => (
          <li>{text}</li>
        ))}
      </ul>
      <p class="rest">{advice.more.join(' ')}</p>
    </div>
  );
}

/** A class's list, every verdict with its chief reason, and the way to the rest. */
export function AdviceSummary({ content, classId, root }: SummaryOf): JSX.Element | null {
  const { next, writing } = content;
  const own = next?.classes.find((one) => one.classId === classId);
  if (!next || !own || own.varieties.length === 0) return null;
  const say = writing.words.nextSeason;
  return (
    <div class="summary">
      <p>
        {own.list[0]}{' '}
        <a href={`${to(root, addresses.nextSeason)}#class-${classId}`}>{say.inFull(String(next.season))}</a>
      </p>
      <ul>
        {own.varieties.map(({ variety, sentence, chief }) => (
          <li>
            <strong>{nameOf(content, variety)}</strong>. {sentence} {chief.join(' ')}
          </li>
        ))}
      </ul>
    </div>
  );
}

interface SummaryOf {
  readonly content: FrameContent;
  readonly classId: string;
  readonly root: string;
}
