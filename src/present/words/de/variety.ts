import type { Words } from '../en/index.ts';

export const variety: Words['variety'] = {
  first: 'erste',
  generation: (f: number) => `F${f}-Linie`,
  seenIn: (n: number) => `In ${n} Saison${n === 1 ? '' : 's'} beobachtet.`,
  beside: 'Neben den anderen ihrer Klasse',
  bySeason: 'Saison für Saison',
  bySeasonCaption: (level: string) => `Beobachtet, mit Intervallen zu ${level}`,
  yield: 'Ertrag je Pflanze',
  median: 'Tage bis zur ersten reifen Frucht, Modell',
  rating: (trait: string) => `Verkoster: ${trait}`,
  shares: 'Anteile',
  kOfN: 'k von n',
  interval: 'Intervall',
  share: {
    germinated: 'gekeimte Samen',
    cropped: 'Pflanzen, die überhaupt trugen',
    ripe_by_end: 'Pflanzen, die bis zum Saisonende reif waren',
    off_type: 'sortenuntypische Pflanzen',
    hot: 'Pflanzen mit unerwartet scharfen Früchten',
  },
  movedTo: (name: string) => `Diese Sorte hat eine neue Adresse: ${name}.`,
  parents: (mother: string, father: string) => `Kreuzung aus ${mother} und ${father}.`,
  unknownParent: 'einem unbekannten Elternteil',
  source: (from: string) => `Saatgut von ${from}.`,
  alsoKnownAs: (names: string) => `Auch bekannt als ${names}.`,
  hotCaution:
    'Scharfe Früchte brennen auf der Haut und in den Augen. Zum Ernten und Schneiden Handschuhe tragen, Kinder fernhalten und die Hände waschen, bevor sie das Gesicht berühren.',
  crossCaution:
    'Früchte einer unbekannten Kreuzung sollten nicht gegessen werden, bevor bekannt ist, woraus gekreuzt wurde: Verwandte dieser Pflanzen können bitter oder giftig sein.',
};
