import type { JSX } from 'preact';
import { weatherByWeek } from '../../src/present/pages/weatherWeeks.ts';
import type { Weeks } from '../../src/present/pages/days.ts';
import type { Season } from '../../src/terms/trial.ts';
import type { FrameContent } from '../content.ts';

const TALL = 56;
const RAIN = 26;

/** Places and width of bars of equal steps, in per cent. */
function stepsOf(count: number): { readonly x: (i: number) => string; readonly width: string } {
  const step = 100 / count;
  return {
    x: (i) => `${Math.round(100 * step * (i + 0.06)) / 100}%`,
    width: `${Math.round(88 * step) / 100}%`,
  };
}

/** Rain by week, the wettest in words. */
function RainRow({ content, rain }: { readonly content: FrameContent; readonly rain: readonly number[] }): JSX.Element {
  const { writing } = content;
  const most = Math.max(...rain);
  const { x, width } = stepsOf(rain.length);
  const tall = (mm: number): number => Math.round((mm / most) * RAIN * 10) / 10;
  return (
    <tr>
      <th scope="row">{writing.words.bench.season.rain}</th>
      <td>
        <svg class="bars" width="100%" height={RAIN + 18} aria-hidden="true">
          {rain.map((mm, i) =>
            mm > 0 ? <rect class="rain" x={x(i)} width={width} y={RAIN + 10 - tall(mm)} height={tall(mm)} /> : null,
          )}
          <text x={x(rain.indexOf(most) + 0.44)} y={7} text-anchor="middle" class="t">
            {writing.quantity(most, 'rain', 0)}
          </text>
        </svg>
      </td>
      <td></td>
      <td></td>
    </tr>
  );
}

/** Warmth and rain of the same weeks as the pickings; nothing where no weather was recorded. */
export function WeatherRows({
  content,
  season,
  weeks,
}: {
  readonly content: FrameContent;
  readonly season: Season;
  readonly weeks: Weeks;
}): JSX.Element | null {
  const found = weatherByWeek(season, weeks);
  if (!found) return null;
  const { writing } = content;
  const say = writing.words.bench.season;
  const { warm, rain } = found;
  const { x, width } = stepsOf(weeks.count);
  const temperatures = warm.flatMap((own) => (own ? [own.low, own.high] : []));
  const [least, most] = [Math.min(...temperatures), Math.max(...temperatures)];
  const y = (celsius: number): number =>
    Math.round((16 + (1 - (celsius - least) / Math.max(1, most - least)) * (TALL - 20)) * 10) / 10;
  const hottest = warm.findIndex((own) => own?.high === most);
  return (
    <tbody class="wx">
      <tr>
        <th scope="row">
          {say.warmth} <span class="m">{say.warmthNote}</span>
        </th>
        <td>
          <svg class="bars" width="100%" height={TALL} aria-hidden="true">
            {warm.map((own, i) =>
              own ? (
                <rect
                  class="warm"
                  x={x(i)}
                  width={width}
                  y={y(own.high)}
                  height={Math.max(1, y(own.low) - y(own.high))}
                />
              ) : null,
            )}
            <text x={x(hottest + 0.44)} y={y(most) - 4} text-anchor="middle" class="t">
              {writing.quantity(most, '°C', 0)}
            </text>
          </svg>
        </td>
        <td></td>
        <td></td>
      </tr>
      {rain && Math.max(...rain) > 0 ? <RainRow content={content} rain={rain} /> : null}
    </tbody>
  );
}
