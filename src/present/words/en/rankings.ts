/** Words about what members of a club preferred. */
export const rankings = {
  title: (trait: string) => `What members preferred: ${trait}`,
  lead: (members: string, sent: string) =>
    members === sent
      ? `${members} members answered, all who were sent two of the class or more.`
      : `${members} of the ${sent} members who were sent two of the class or more answered.`,
  best: (name: string, share: string, low: string, high: string) =>
    `${name} was preferred most: before a middling one in ${share} of 100 (${low} to ${high}).`,
  few: 'Fewer than five members answered, so nothing is told of their answers.',
  alike: 'They saw no difference in what they were sent.',
  caption: (level: string) =>
    `Each said which of those they were sent was best and which worst. Shares of 100 with their ${level} intervals, which may be set beside each other.`,
  head: ['Variety', 'Answers', 'Before a middling one, of 100', 'First · between or alike · last'],
  fewOf: 'of fewer than five not told',
  range: (share: string, low: string, high: string) => `${share} (${low} to ${high})`,
  silent: 'Those who did not answer may think otherwise.',
};
