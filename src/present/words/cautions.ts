import type { Caution } from '../../analyse/cautions.ts';

function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** A caution as sentences. */
export function cautionText(
  caution: Caution,
  nameOf: (id: string) => string,
  number: (value: number) => string,
): string {
  switch (caution.kind) {
    case 'no-residual-df':
      return 'One planting of each variety: there is nothing to tell a variety from its spot by, so the figures have no intervals. Two plantings of a few varieties would give them.';
    case 'single-plantings':
      return `${listed(caution.varieties.map(nameOf))} stood in a single planting; the spread between plants is borrowed from the other varieties.`;
    case 'one-bed':
      return `All plants of ${listed(caution.varieties.map(nameOf))} stood in one bed: variety and bed cannot be told apart.`;
    case 'mixed-topped':
      return 'Some plants were topped and some were not; topping delays the first fruit, and the figures mix both.';
    case 'only-topped':
      return 'All plants were topped: the figures hold for topped plants.';
    case 'mixed-stands':
      return caution.adjusted
        ? 'Some plants stood in containers and some in the ground; the estimates of yield and fruits are adjusted for it.'
        : 'Some plants stood in containers and some in the ground, and the varieties cannot be compared within either: variety and container are mixed up.';
    case 'only-pots':
      return 'All plants stood in containers: the figures hold for containers.';
    case 'unequal-plantings':
      return 'Plantings differ in their number of plants. The first ripe fruit of a larger planting comes earlier for that reason alone.';
    case 'not-blind':
      return caution.known === caution.scores
        ? 'The tasters knew what they tasted, or it was not recorded that they did not.'
        : `${number(caution.known)} of ${number(caution.scores)} scores were not given blind.`;
    case 'high-cv':
      return `Plants of one variety differed much among themselves (CV ${number(caution.cv)} %): differences between varieties are hard to see.`;
    case 'class-sizes-differ':
      return 'One mean square is pooled over classes of very different yield; the ratio scale would suit this trial better.';
  }
}
