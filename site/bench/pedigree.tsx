import type { JSX } from 'preact';
import type { CrossFamily } from '../../src/analyse/lines/crosses.ts';
import type { CrossReport } from '../../src/decide/lines/crossReport.ts';
import { countsText, generationName, plantName } from '../../src/present/pages/crossWords.ts';
import { nameLookup } from '../../src/terms/trial.ts';
import type { FrameContent } from '../content.ts';

/** What is written of a family: its generation, its plants by state, the plants whose seed was saved. */
function familyLines(family: CrossFamily, report: CrossReport, { writing }: FrameContent): readonly string[] {
  const { lines: say } = writing.words;
  const states = report.traits.map(({ trait }) => countsText(family.counts.get(trait.key), trait.states));
  const saved = family.plants.filter(({ lots }) => lots.length > 0).map(plantName);
  return [
    `${generationName(family, writing)} ${family.years.join(', ')}`.trim(),
    ...(family.plants.length > 0 ? [say.plants(String(family.plants.length))] : []),
    ...states.filter((text) => text !== ''),
    ...(saved.length > 0 ? [`${say.seedSaved}: ${saved.join(', ')}`] : []),
  ];
}

/** Where a family's seed came from, in words: `from 4`, `seed of 3 plants mixed`. */
function fromText({ mothers, mayBeCrossed, generation }: CrossFamily, { writing }: FrameContent): string {
  const { lines: say } = writing.words;
  const open = mayBeCrossed && (generation ?? 0) > 1 ? `, ${say.openFlower}` : '';
  if (mothers.length > 1) return `${say.bulk(String(mothers.length))}${open}`;
  const [mother] = mothers;
  return mother ? `${say.from(plantName(mother))}${open}` : '';
}

const [WIDE, LINE, GAP, TOP] = [168, 15, 14, 14];

/** Families with the place of each: a column a generation, one below the other. */
function placed(report: CrossReport, content: FrameContent) {
  const generations = [...new Set(report.cross.families.map(({ generation }) => generation ?? 99))].toSorted(
    (a, b) => a - b,
  );
  const heights = generations.map(() => TOP);
  return report.cross.families.map((family) => {
    const column = generations.indexOf(family.generation ?? 99);
    const lines = familyLines(family, report, content);
    const y = heights[column] ?? TOP;
    heights[column] = y + LINE * lines.length + GAP;
    return { family, lines, x: (column + 1) * WIDE, y };
  });
}

/** The pedigree: columns are generations on a wide page, a nested list for readers, phones and print. */
export function Pedigree({
  content,
  report,
}: {
  readonly content: FrameContent;
  readonly report: CrossReport;
}): JSX.Element {
  const { writing, trial } = content;
  const { lines: say } = writing.words;
  const { cross } = report;
  const name = (id: string | null): string => (id === null ? say.unknown : nameLookup(trial.varieties)(id));
  const parents = [name(cross.mother), `× ${name(cross.father)}`];
  const nodes = placed(report, content);
  const height = Math.max(...nodes.map(({ y, lines }) => y + LINE * lines.length), 3 * LINE) + GAP;
  const width = Math.max(...nodes.map(({ x }) => x), WIDE) + WIDE;
  return (
    <section aria-labelledby="pedigree">
      <h2 id="pedigree">{say.pedigree}</h2>
      <svg class="tree" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {parents.map((text, i) => (
          <text x="0" y={TOP + i * LINE}>
            {text}
          </text>
        ))}
        {nodes.map(({ family, lines, x, y }) => {
          const [mother] = family.mothers;
          const from = nodes.find((own) => mother !== undefined && own.family.plants.includes(mother));
          const [x1, y1] = from ? [from.x + WIDE - 30, from.y - 4] : [WIDE - 40, TOP - 4];
          const bend = `M${x1} ${y1}C${x1 + 14} ${y1} ${x - 18} ${y - 4} ${x - 6} ${y - 4}`;
          const isOpen = family.mayBeCrossed && (family.generation ?? 0) > 1;
          return (
            <>
              <path d={bend} class={isOpen ? 'open' : ''} />
              {family.mothers.length > 1 ? <path d={bend} transform="translate(0 4)" /> : null}
              {lines.map((text, i) => (
                <text x={x} y={y + i * LINE} class={i === 0 ? 'b' : ''}>
                  {text}
                </text>
              ))}
            </>
          );
        })}
      </svg>
      <p class="m">{say.pedigreeNote}</p>
      <ul class="descent">
        <li>
          {parents.join(' ')}
          <Descent
            families={cross.families.filter(({ mothers }) => mothers.length === 0)}
            content={content}
            report={report}
          />
        </li>
      </ul>
    </section>
  );
}

function Descent({
  families,
  content,
  report,
}: {
  readonly families: readonly CrossFamily[];
  readonly content: FrameContent;
  readonly report: CrossReport;
}): JSX.Element | null {
  if (families.length === 0) return null;
  return (
    <ul>
      {families.map((family) => {
        const next = report.cross.families.filter(
          ({ mothers }) => mothers[0] !== undefined && family.plants.includes(mothers[0]),
        );
        const from = fromText(family, content);
        return (
          <li>
            {familyLines(family, report, content).join('; ')}
            {from === '' ? '' : ` (${from})`}
            <Descent families={next} content={content} report={report} />
          </li>
        );
      })}
    </ul>
  );
}
