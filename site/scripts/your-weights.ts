import type { ClassAdvice } from '../../src/decide/adviseClass.ts';
import type { ClassCase } from '../../src/decide/cases.ts';
import { adviseWith, openForecasts } from '../../src/decide/weightsPage.ts';
import { hundredths } from '../../src/decide/verdict.ts';
import type { WeightsDocument } from '../../src/present/nextSeason/weights.ts';

/** The page of own weights: the built verdicts stand in the table, and are counted again when a weight is moved. */
const data = JSON.parse(document.getElementById('weights-data')!.textContent) as WeightsDocument;
const { settings, words } = data;
const format = new Intl.NumberFormat(data.language, { maximumFractionDigits: 1 });
const whole = new Intl.NumberFormat(data.language, { maximumFractionDigits: 0 });
let forecasts: ReturnType<typeof openForecasts> | null = null;

function of100(share: number): string {
  if (share > 0.995) return words.moreThan99;
  return share < 0.005 ? words.fewerThan1 : words.of100.replace('{n}', whole.format(hundredths(share, settings)));
}

interface Section {
  readonly own: ClassCase;
  readonly weights: readonly HTMLInputElement[];
  readonly spots: HTMLInputElement;
  readonly status: HTMLElement;
  readonly body: HTMLElement;
}

const sections: readonly Section[] = data.classes.map((own) => {
  const at = document.querySelector<HTMLElement>(`section[data-class="${CSS.escape(own.classId)}"]`)!;
  return {
    own,
    weights: [...at.querySelectorAll<HTMLInputElement>('input[data-trait]')],
    spots: at.querySelector<HTMLInputElement>('input[data-spots]')!,
    status: at.querySelector<HTMLElement>('[role="status"]')!,
    body: at.querySelector<HTMLElement>('tbody')!,
  };
});

function show({ body, status }: Section, advice: ClassAdvice | null): void {
  status.textContent = advice ? words.counted : words.none;
  if (!advice) return body.replaceChildren();
  const rows = advice.varieties.map(({ variety, verdict, share, above }) => {
    const row = document.createElement('tr');
    row.dataset['counted'] = '';
    row.dataset['variety'] = variety;
    row.dataset['earned'] = String(share * settings.simulations);
    row.dataset['above'] = String(above * settings.simulations);
    const name = document.createElement('th');
    name.scope = 'row';
    name.textContent = data.names[variety] ?? variety;
    const texts = [
      words.verdict[verdict] ?? verdict,
      of100(share),
      of100(above),
      advice.list.includes(variety) ? words.yes : words.no,
    ];
    row.append(
      name,
      ...texts.map((text) => {
        const cell = document.createElement('td');
        cell.textContent = text;
        return cell;
      }),
    );
    return row;
  });
  body.replaceChildren(...rows);
}

function spotsOf({ spots, own }: Section): number {
  const n = Math.round(Number(spots.value));
  return n >= 1 ? n : own.spots;
}

function count(section: Section): void {
  forecasts ??= openForecasts(data);
  const weights = new Map(section.weights.map((input) => [input.dataset['trait']!, Number(input.value)]));
  show(section, adviseWith(section.own, forecasts, settings, weights, spotsOf(section)));
}

function showWeights({ weights }: Section): void {
  for (const input of weights) {
    const output = input.parentElement!.querySelector('output')!;
    output.textContent = format.format(Number(input.value));
    input.setAttribute('aria-valuetext', output.textContent);
  }
}

/** Weights that differ from the club's, as the part of an address after `#`. */
function writeLink(): void {
  const parts = new URLSearchParams();
  for (const section of sections) {
    for (const input of section.weights) {
      if (input.value !== input.defaultValue)
        parts.set(`${section.own.classId}.${input.dataset['trait']}`, input.value);
    }
    if (section.spots.value !== section.spots.defaultValue)
      parts.set(`${section.own.classId}.spots`, section.spots.value);
  }
  document.querySelector<HTMLAnchorElement>('#weights-link')!.href = `#${parts}`;
}

/** Takes the weights of the address; at first a section that it does not name keeps what the build counted. */
function readLink(isFirst: boolean): void {
  const parts = new URLSearchParams(location.hash.slice(1));
  for (const section of sections) {
    const isNamed = [...parts.keys()].some((key) => key.startsWith(`${section.own.classId}.`));
    for (const input of section.weights) {
      const found = parts.get(`${section.own.classId}.${input.dataset['trait']}`);
      input.value = found !== null && Number(found) >= 0 ? found : input.defaultValue;
    }
    section.spots.value = parts.get(`${section.own.classId}.spots`) ?? section.spots.defaultValue;
    showWeights(section);
    if (isNamed || !isFirst) count(section);
  }
  writeLink();
}

for (const section of sections) {
  let waiting = 0;
  const changed = (): void => {
    showWeights(section);
    writeLink();
    clearTimeout(waiting);
    waiting = setTimeout(() => count(section), 60);
  };
  for (const input of [...section.weights, section.spots]) input.addEventListener('input', changed);
}
document.querySelector('#weights-reset')!.addEventListener('click', () => {
  history.replaceState(null, '', location.pathname);
  readLink(false);
});
addEventListener('hashchange', () => readLink(false));
readLink(true);
