import type { rankings as english } from '../en/rankings.ts';

/** Worte darüber, was Mitglieder vorzogen. */
export const rankings: typeof english = {
  title: (trait) => `Was Mitglieder vorzogen: ${trait}`,
  lead: (members, sent) =>
    members === sent
      ? `${members} Mitglieder antworteten, alle, die zwei der Klasse oder mehr bekamen.`
      : `${members} der ${sent} Mitglieder, die zwei der Klasse oder mehr bekamen, antworteten.`,
  best: (name, share, low, high) =>
    `${name} wurde am meisten vorgezogen: in ${share} von 100 Fällen vor einer mittleren Sorte (${low} bis ${high}).`,
  few: 'Weniger als fünf Mitglieder antworteten, darum wird über ihre Antworten nichts gesagt.',
  alike: 'Sie sahen keinen Unterschied zwischen dem, was sie bekamen.',
  caption: (level) =>
    `Jedes sagte, welche der erhaltenen Sorten die beste und welche die schlechteste war. Anteile von 100 mit ihren ${level}-Bereichen, die nebeneinander gelesen werden dürfen.`,
  head: ['Sorte', 'Antworten', 'Vor einer mittleren, von 100', 'Zuerst · dazwischen oder gleich · zuletzt'],
  fewOf: 'von weniger als fünf nicht genannt',
  range: (share, low, high) => `${share} (${low} bis ${high})`,
  silent: 'Die nicht antworteten, mögen anders denken.',
};
