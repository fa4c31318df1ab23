import type { CrossSource } from './crossWords.ts';

/** Cautions that a cross gives cause for. */
export function crossCautions(
  { report, trial, writing }: CrossSource,
  isHot: (variety: string) => boolean,
): readonly string[] {
  const { cautions: say } = writing.words.lines;
  const { cross } = report;
  const [mother, father] = [cross.mother, cross.father].map((id) => trial.varieties.find((own) => own.id === id));
  const isNightshade = /^(?:capsicum|solanum)/i.test(cross.species ?? '');
  const isSquash = /^cucurbita|^cucumis/i.test(cross.species ?? '');
  const anyHot = [mother?.id, father?.id, ...cross.families.map(({ variety }) => variety.id)].some(
    (id) => id !== undefined && isHot(id),
  );
  return [
    ...(father === undefined && isNightshade ? [say.unknownPollen] : []),
    ...(isSquash ? [say.bitter] : []),
    ...(anyHot ? [say.hot] : []),
    ...(cross.families.some(({ plants }) => plants.some(({ lots }) => lots.length > 0)) ? [say.sharing] : []),
  ];
}
