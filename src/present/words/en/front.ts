export const front = {
  later: (name: string, seen: string, claimed: string) =>
    `${name} ripened later than its packet says: ${seen}, claimed ${claimed}.`,
  earlier: (name: string, seen: string, claimed: string) =>
    `${name} ripened earlier than its packet says: ${seen}, claimed ${claimed}.`,
  more: (name: string, check: string, figure: string) => `${name} gave ${figure} times the yield of ${check}.`,
  newKeep: (name: string, share: string) =>
    `${name}, grown for the first time, earns its spot in ${share} simulated seasons.`,
};

export const handout = {
  title: (year: string) => `The ${year} trial on two sides`,
  intro: (place: string, date: string) => `${place === '' ? '' : `${place}. `}Recorded to ${date}.`,
  verdicts: (year: string, simulations: string) =>
    `What to grow in ${year}: of 100 simulated seasons (${simulations} drawn from all records), those in which a variety earns one of its class’s spots. Each filled square is five of them.`,
  older: 'Advice stands on the handout of the last season only.',
  class: 'Class',
  cautions:
    'Hot peppers burn skin and eyes: gloves, and away from children. Fruit of unknown crosses is not for eating. Peppers and tomatoes are preserved by tested recipes only. Treated seed is not for eating or feeding.',
  site: 'Everything in full:',
};

export const glossary = {
  title: 'Glossary',
  terms: [
    ['Variety', 'What is compared: a cultivar, a hybrid or a line in progress.'],
    ['Planting', 'The unit of every comparison: one plant, or plants of one variety recorded together.'],
    ['Class', 'Varieties that compete for the same spots, such as sweet peppers.'],
    ['Check variety', 'The known standard of a class, grown each year to compare with.'],
    ['New, returning', 'New in its first season of the trial; returning in every later one.'],
    ['Block', 'Plantings grouped because their places are alike.'],
    ['n', 'How many plantings (or tasters, or seeds) a figure rests on.'],
    ['Interval', 'From where to where the true figure may well lie, given these plants.'],
    [
      'Prediction interval',
      'From where to where a variety’s own mean may well lie in an average next season; a good or bad year, and which plants you happen to raise, come on top.',
    ],
    ['CV', 'Coefficient of variation: how much plants of one variety differ, in per cent of their mean.'],
    ['Letters', 'Two varieties that share a letter are not separated in this trial.'],
    ['LSD', 'Least significant difference: the smallest difference of two means that counts as separated.'],
    ['F', 'Whether the varieties of a class differ at all.'],
    ['Median days', 'The day by which half of the plantings had a ripe fruit.'],
    ['Degree days', 'Days counted by their warmth above a base temperature.'],
    ['Seen', 'What this season’s plants did.'],
    ['Expected', 'What an average next season is likely to bring, from all seasons together.'],
    ['Pull', 'How far an expected value is drawn to its class because the records are thin.'],
    ['Spot', 'A place for one variety of a class next season.'],
    ['Bar', 'What a variety must reach to earn a spot: a newcomer in the middle of its class, or the check variety.'],
    ['Share', 'Of 100 simulated next seasons, those in which a variety earns a spot.'],
    ['Score', 'Weighted mean of the points, 0 to 100, that a variety gets for what counts.'],
    ['Keep, drop, no room, try again', 'The four verdicts; the methods page says where their limits lie.'],
    ['Line', 'A cross in progress, generation by generation (F2, F3 …).'],
    ['Cull', 'A fruit that cannot be used.'],
  ] as readonly (readonly [string, string])[],
};
