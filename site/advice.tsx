import { addresses } from '../src/terms/addresses.ts';
import type { JSX } from 'preact';
import { nameOf } from '../src/present/nextSeason/source.ts';
import type { AdviceWords } from '../src/present/nextSeason/varietyAdvice.ts';
import type { SiteContent } from './content.ts';
import { to } from './layout.tsx';

const SQUARES = 20;
const SIDE = 8;
const STEP = 10;

/** Twenty small squares, as many filled as the share has twentieths: for the eye, the words stand beside it. */
export function Squares({ share }: { readonly share: number }): JSX.Element {
  const filled = Math.round(share * SQUARES);
  return (
    <svg
      class="squares"
      width={SQUARES * STEP}
      height={SIDE}
      viewBox={`0 0 ${SQUARES * STEP} ${SIDE}`}
      aria-hidden="true"
    >
      {Array.from({ length: SQUARES }, (_, i) => (
        <rect
          x={i * STEP + 0.5}
          y={0.5}
          width={SIDE - 1}
          height={SIDE - 1}
          fill={i < filled ? 'var(--ink)' : 'none'}
          stroke="var(--rule)"
        />
      ))}
    </svg>
  );
}

/** A verdict with its share, its reasons and its doubts. */
export function Advice({ advice }: { readonly advice: AdviceWords }): JSX.Element {
  return (
    <div class="advice">
      <p>
        <span class={`mark ${advice.verdict}`} aria-hidden="true"></span>
        {advice.sentence}
      </p>
      <Squares share={advice.share} />
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
    <div class="list">
      <p>
        {say.advice(String(next.season))}. {own.list[0]}{' '}
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
  readonly content: SiteContent;
  readonly classId: string;
  readonly root: string;
}
