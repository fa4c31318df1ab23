import { traits, frame, status, figure, tables, listed, capital } from './shared.ts';
import { bench } from './bench.ts';
import { report, charts } from './class.ts';
import { season, seasons, fruit, map } from './season.ts';
import { variety } from './variety.ts';
import { front, handout, glossary } from './front.ts';
import { data, notes } from './data.ts';
import { problems } from './problems.ts';
import { methods } from './methods.ts';
import { lines } from './lines.ts';
import { plan } from './plan.ts';
import { rankings } from './rankings.ts';
import { club } from './club.ts';
import { nextSeason, yourWeights } from './next.ts';

/** Every word that a reader sees, in English. */
export const english = {
  bench,
  lines,
  plan,
  rankings,
  club,
  listed,
  capital,
  traits,
  frame,
  status,
  figure,
  tables,
  report,
  charts,
  season,
  variety,
  seasons,
  data,
  notes,
  fruit,
  map,
  front,
  problems,
  methods,
  handout,
  glossary,
  nextSeason,
  yourWeights,
};

/** What every language has to say. */
export type Words = typeof english;
