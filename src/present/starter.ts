/** Files of a new trial folder: settings and tables with a small example season that builds as it is. */
export const STARTER: Readonly<Record<string, string>> = {
  'data/trial.yaml': `# Settings of the trial. A line that begins with # is a comment.
title: My variety trial
# place: Allotment on the hill      # shown on the site, as exact as you like
language: en-GB
units: metric                       # or us
season_end: 10-31                   # last day of recording, month-day

classes:                            # what competes with what
  sweet: {name: Sweet peppers, check_variety: first-sort, spots: 2}

traits:
  flavour: {kind: rating, from: 1, to: 9, better: higher}
  fruit_length: {kind: measure, unit: cm, better: none}

goals:                              # what counts, and how much
  sweet: {yield: 3, flavour: 4, first_ripe: 2}

seasons:
  2026: {transplanted: 2026-05-20, harvests: complete}   # every picking was written down
`,
  'data/varieties.csv': `variety,name,class,kind,claim_days,colour_ripe,notes
first-sort,First Sort,sweet,open-pollinated,80,red,
second-sort,Second Sort,sweet,open-pollinated,75,orange,
`,
  'data/2026/plantings.csv': `planting,variety,plants,bed,removed,cause,notes
p1,first-sort,1,south bed,,,
p2,first-sort,1,south bed,,,
p3,second-sort,1,south bed,,,
p4,second-sort,1,south bed,,,
`,
  'data/2026/harvests.csv': `date,planting,fruits,weight_g,stage
2026-08-08,p1,2,230,ripe
2026-08-10,p3,4,310,ripe
2026-08-12,p2,3,340,ripe
2026-08-15,p4,3,240,ripe
2026-08-29,p1,4,470,ripe
2026-08-29,p2,3,330,ripe
2026-08-29,p3,5,390,ripe
2026-08-29,p4,6,450,ripe
`,
  'data/2026/observations.csv': `date,planting,event,count,of,notes
2026-08-04,p1,unripe,,,
`,
  'data/2026/ratings.csv': `date,taster,variety,flavour,again,blind
2026-09-05,Ann,first-sort,6,yes,yes
2026-09-05,Ann,second-sort,7,yes,yes
2026-09-05,Ben,first-sort,7,yes,yes
2026-09-05,Ben,second-sort,7,no,yes
`,
  'data/2026/measurements.csv': `date,planting,fruit_length_cm
2026-08-29,p1,9.5
2026-08-29,p3,12.0
`,
};

/** Settings of a trial that starts from names: two ratings that most growers give, and nothing of an example. */
export const BARE_SETTINGS = `# Settings of the trial. A line that begins with # is a comment.
title: My variety trial
# place: Allotment on the hill      # shown on the site, as exact as you like
language: en-GB
units: metric                       # or us
season_end: 10-31                   # last day of recording, month-day

traits:
  flavour: {kind: rating, from: 1, to: 9, better: higher}
  heat: {kind: rating, from: 0, to: 10, better: none}
`;
