import type { Day } from '../../terms/day.ts';
import type { WeatherDay } from '../../terms/trial.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { dayIn, isFilled, neededIn, placeIn, quantityIn, textIn } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { reportFills, see, watchFills } from '../../sheet/fillDown.ts';
import { reportWeather } from '../rules/weatherDays.ts';
import type { PlacedDay, WeatherSpan } from '../rules/weatherDays.ts';

const SPEC = {
  required: [['date'], ['tmin'], ['tmax']],
  columns: ['date', 'notes'],
  quantities: [
    { name: 'tmin', dimension: 'temperature' },
    { name: 'tmax', dimension: 'temperature' },
    { name: 'rain', dimension: 'depth' },
    { name: 'soil', dimension: 'temperature' },
  ],
} as const;

/** Nothing grows, and no thermometer stood, outside these (°C); recorded extremes of the earth's surface, rounded outward. */
const COLDEST = -90;
const HOTTEST = 60;

/** Checks weather.csv. Days without both temperatures are left out. */
export function checkWeather(source: SourceFile, span: WeatherSpan, context: CheckContext): readonly WeatherDay[] {
  const known = openKnown(source, SPEC, context);
  if (!known) return [];
  const days = new Map<Day, PlacedDay>();
  const fills = watchFills();
  for (const row of rowsOf(known)) {
    const day = neededIn(row, 'date') === null ? null : dayIn(row, 'date', context);
    const tminC = quantityIn(row, 'tmin', true);
    const tmaxC = quantityIn(row, 'tmax', true);
    const rainMm = quantityIn(row, 'rain');
    const soilC = quantityIn(row, 'soil', true);
    for (const [column, value] of [
      ['tmin', tminC],
      ['tmax', tmaxC],
    ] as const) {
      if (value !== null && (value < COLDEST || value > HOTTEST)) {
        context.log.add('temperature-implausible', placeIn(row, column), String(Math.round(value)));
      }
    }
    see(fills, 'tmin', tminC, row.raw.line);
    see(fills, 'tmax', tmaxC, row.raw.line);
    if (day !== null && (tminC === null || tmaxC === null)) {
      const column = tminC === null ? 'tmin' : 'tmax';
      if (!isFilled(row, column)) context.log.add('weather-half', placeIn(row, column), '', { column });
    }
    if (day === null || tminC === null || tmaxC === null) continue;
    if (tminC > tmaxC) {
      context.log.add('tmin-over-tmax', placeIn(row, 'tmin'), `${Math.round(tminC * 10) / 10} °C`, {
        tmax: `${Math.round(tmaxC * 10) / 10} °C`,
      });
      continue;
    }
    if (days.has(day)) context.log.add('weather-day-twice', placeIn(row, 'date'), textIn(row, 'date') ?? '');
    else days.set(day, { own: { day, tminC, tmaxC, rainMm, soilC }, place: placeIn(row, 'date') });
  }
  reportFills(fills, source.path, context.log);
  const inOrder = [...days.values()].toSorted((a, b) => a.own.day - b.own.day);
  reportWeather(inOrder, { ...span, file: source.path }, context);
  return inOrder.map(({ own }) => own);
}
