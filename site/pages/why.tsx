import type { JSX } from 'preact';
import type { WhyRow } from '../../src/present/pages/variety.ts';
import type { Stand } from '../../src/present/pages/stands.ts';
import { Strip } from '../bench/rows.tsx';
import type { FrameContent } from '../content.ts';

/** Points for a variety to the right, against it to the left. */
function Push({ effect, most }: { readonly effect: number; readonly most: number }): JSX.Element {
  const width = Math.round((4800 * Math.abs(effect)) / most) / 100;
  return (
    <svg class="push" width="100%" height="14" aria-hidden="true">
      <line x1="50%" x2="50%" y1="0" y2="14" class="ci" />
      <rect x={`${effect < 0 ? 50 - width : 50}%`} y="2" width={`${width}%`} height="10" fill="currentColor" />
    </svg>
  );
}

/** One goal: its strip, the expected value beside the bar, the points it makes. */
function WhyLine({
  row,
  colour,
  most,
}: {
  readonly row: WhyRow;
  readonly colour: string | null;
  readonly most: number;
}): JSX.Element {
  return (
    <tr>
      <th scope="row">
        {row.heading} <span>{row.weight}</span>
      </th>
      <td>
        <Strip
          from={row.from}
          to={row.to}
          estimate={row.estimate}
          low={row.low}
          high={row.high}
          bar={row.bar}
          others={row.others}
          colour={colour}
          isLarge
        />
        <span class="ax">
          <span>{row.fromText}</span>
          <span>{row.toText}</span>
        </span>
      </td>
      <td class="num">
        <b>{row.figure}</b> <span class="m">{row.range}</span>
        <br />
        <span class="m">{row.beside}</span>
      </td>
      <td>
        <Push effect={row.effect} most={most} />
        <span class="num">{row.effectText}</span>
      </td>
    </tr>
  );
}

/** Why a verdict: a strip a goal, with the others, what it is set against, and the points it makes. */
export function Why({
  content,
  stand,
  rows,
  bar,
  isFirm,
}: {
  readonly content: FrameContent;
  readonly stand: Stand;
  readonly rows: readonly WhyRow[];
  /** Name of the check variety where that is the bar. */
  readonly bar: string | null;
  readonly isFirm: boolean;
}): JSX.Element | null {
  if (rows.length === 0) return null;
  const { writing, trial } = content;
  const say = writing.words.bench.variety;
  const { variety, standing } = stand;
  const title = standing === 'keep' ? say.why.keep : standing === 'drop' ? say.why.drop : say.why.other;
  const most = Math.max(5, ...rows.map(({ effect }) => Math.abs(effect)));
  return (
    <section aria-labelledby="why">
      <h2 id="why">{title}</h2>
      <p class="m">
        {say.whyNote(bar !== null, bar ?? '')} {isFirm ? say.firm : ''}
      </p>
      <table class="why">
        <caption class="vh">{title}</caption>
        <thead>
          <tr>
            <td></td>
            <td>
              <span aria-hidden="true">
                ● {say.itself(variety.name, writing.percent(trial.settings.interval))} &ensp; ○ {say.others} &ensp; ┊{' '}
                {bar === null ? say.average : say.check(bar)}
              </span>
            </td>
            <th scope="col">{say.expected}</th>
            <th scope="col">{say.against}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <WhyLine row={row} colour={variety.colourRipe} most={most} />
          ))}
        </tbody>
      </table>
    </section>
  );
}
