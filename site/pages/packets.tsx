import type { JSX } from 'preact';
import { judgeClaim } from '../../src/analyse/claims.ts';
import type { ClaimVerdict } from '../../src/analyse/claims.ts';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { ripeningModel } from '../../src/analyse/traitsSeen.ts';
import { addresses } from '../../src/terms/addresses.ts';
import type { Estimate } from '../../src/terms/estimate.ts';
import type { Variety } from '../../src/terms/trial.ts';
import type { SeasonPart, FrameContent } from '../content.ts';
import { to } from '../layout.tsx';

interface Claimed {
  readonly variety: Variety;
  readonly claim: readonly [number, number];
  readonly model: Estimate;
  readonly estimate: number;
  readonly found: ClaimVerdict;
}

/** Varieties whose packet claims days, with what was seen. */
function claimedIn(seen: SeasonSeen): readonly Claimed[] {
  return seen.varieties.flatMap(({ variety }): readonly Claimed[] => {
    const model = ripeningModel(seen)?.estimates.get(variety.id);
    const claim = variety.claimDays;
    if (!claim || !model || model.estimate === null) return [];
    return [{ variety, claim, model, estimate: model.estimate, found: judgeClaim(claim, model) }];
  });
}

/** The packet's days as a stroke or a box, what was seen as a dot with its interval, the wait between them dotted. */
function ClaimStrip({
  row,
  from,
  to: end,
}: {
  readonly row: Claimed;
  readonly from: number;
  readonly to: number;
}): JSX.Element {
  const { claim, model, estimate, found, variety } = row;
  const share = (days: number): string => `${Math.round((10000 * days) / (end - from)) / 100}%`;
  const x = (value: number): string => share(value - from);
  return (
    <svg width="100%" height="22" aria-hidden="true">
      <line x1="0" x2="100%" y1="11" y2="11" class="base" />
      {found === 'seen-higher' ? <line x1={x(claim[1])} x2={x(estimate)} y1="11" y2="11" class="wait" /> : null}
      {model.low === null || model.high === null ? null : (
        <line x1={x(model.low)} x2={x(model.high)} y1="11" y2="11" class="ci" />
      )}
      {claim[0] === claim[1] ? (
        <line x1={x(claim[0])} x2={x(claim[0])} y1="2" y2="20" class="claim" />
      ) : (
        <rect x={x(claim[0])} width={share(claim[1] - claim[0])} y="2" height="18" class="claimspan" />
      )}
      <circle cx={x(estimate)} cy="11" r="5.5" class="dot" fill={variety.colourRipe ?? 'var(--paper)'} />
    </svg>
  );
}

/** A packet's claim, what was seen, the days between. */
function ClaimRow({
  row,
  content,
  root,
  scale,
}: {
  readonly row: Claimed;
  readonly content: FrameContent;
  readonly root: string;
  readonly scale: { readonly from: number; readonly to: number };
}): JSX.Element {
  const { writing } = content;
  const say = writing.words.bench.front;
  const days = (value: number): string => writing.number(Math.abs(value), 0);
  const told = ({ found, estimate, claim }: Claimed): string => {
    if (found === 'seen-higher') return say.late(days(estimate - claim[1]));
    if (found === 'seen-lower') return say.early(days(claim[0] - estimate));
    return found === 'inside' ? say.asClaimed : say.cannotTell;
  };
  return (
    <tr>
      <th scope="row">
        <a href={to(root, addresses.variety(row.variety.id))}>{row.variety.name}</a>
      </th>
      <td>
        <ClaimStrip row={row} {...scale} />
      </td>
      <td class="num r">{[...new Set(row.claim)].join('–')}</td>
      <td class="num r">
        <b>{days(row.estimate)}</b>
      </td>
      <td class="r">{told(row)}</td>
    </tr>
  );
}

/** Packets against the garden: the claim, what was seen, the days between; null without a claim. */
export function Packets({ content, seen, root }: SeasonPart<FrameContent>): JSX.Element | null {
  const { writing, trial } = content;
  const say = writing.words.bench.front;
  const rows = trial.settings.firstRipeFrom === 'transplanted' ? claimedIn(seen) : [];
  if (rows.length === 0) return null;
  const ends = rows
    .flatMap(({ claim, model }) => [...claim, model.estimate, model.low, model.high])
    .filter((end) => end !== null);
  const scale = { from: Math.min(...ends) - 5, to: Math.max(...ends) + 5 };
  const count = (found: ClaimVerdict): number => rows.filter((row) => row.found === found).length;
  const note = say.packetNote(writing.percent(trial.settings.interval));
  return (
    <section class="wide2" aria-labelledby="packets">
      <h2 id="packets">{say.packet(count('seen-higher'), count('seen-lower'), rows.length)}</h2>
      <p class="s m">{note}</p>
      <table class="packet">
        <caption class="vh">{note}</caption>
        <colgroup>
          {['c1', undefined, 'c3', 'c3', 'c5'].map((name) => (
            <col class={name} />
          ))}
        </colgroup>
        <thead>
          <tr>
            <td></td>
            <td>
              <span aria-hidden="true">{say.packetKey}</span>
            </td>
            {[say.packetHead, say.seenHead].map((head) => (
              <th class="r" scope="col">
                {head}
              </th>
            ))}
            <td></td>
          </tr>
        </thead>
        <tbody>
          {rows
            .toSorted((a, b) => b.estimate - b.claim[1] - (a.estimate - a.claim[1]))
            .map((row) => (
              <ClaimRow row={row} content={content} root={root} scale={scale} />
            ))}
        </tbody>
      </table>
    </section>
  );
}
