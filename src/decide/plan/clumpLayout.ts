import { nth } from '../../numerics/element.ts';
import { randomStream } from '../../numerics/random.ts';
import { plantsIn } from '../../terms/lines.ts';
import type { ClassLayout, LayoutAsked, PlannedPlant } from './layoutTypes.ts';
import { shuffled } from './shuffled.ts';
import type { Spot } from './stretches.ts';

/** Two halves, in each a clump of every variety with two plants or more; none on both sides of the border. */
export function clumpLayout({ stretch: { classId, spots }, varieties, stream: name }: LayoutAsked): ClassLayout {
  const stream = randomStream(name);
  const halves: { readonly variety: string; readonly plants: number }[][] = [[], []];
  const sizeOf = (half: number): number => plantsIn(nth(halves, half));
  for (const { variety, plants } of varieties) {
    const larger = sizeOf(0) <= sizeOf(1) ? 0 : 1;
    const parts = [Math.ceil(plants / 2), Math.floor(plants / 2)];
    nth(halves, larger).push({ variety, plants: nth(parts, 0) });
    if (nth(parts, 1) > 0) nth(halves, 1 - larger).push({ variety, plants: nth(parts, 1) });
  }
  const [one, other] = halves.map((half) => shuffled(half, stream));
  const last = one?.at(-1)?.variety;
  const second = other && other.length > 1 && other[0]?.variety === last ? [...other.slice(1), nth(other, 0)] : other;
  const plants = placeClumps([one ?? [], second ?? []], spots);
  const blocks = [...new Set(plants.map(({ block }) => block))];
  return {
    classId,
    plants,
    sizes: blocks.map((block) => plants.reduce((sum, own) => sum + (own.block === block ? own.plants : 0), 0)),
    variance: null,
    besides: new Map(),
    isTogether: true,
    tallOver: 0,
  };
}

interface Clump {
  readonly variety: string;
  readonly plants: number;
}

/** Clumps one after another; at the end of a bed one that fits comes first, else a clump is parted there. */
function placeClumps(halves: readonly (readonly Clump[])[], spots: readonly Spot[]): readonly PlannedPlant[] {
  const plants: PlannedPlant[] = [];
  const blocks = new Map<string, number>();
  let at = 0;
  halves.forEach((half, h) => {
    const left = [...half];
    while (left.length > 0) {
      const spot = nth(spots, at);
      const room = spots.slice(at).findIndex(({ bed }) => bed !== spot.bed);
      const free = room < 0 ? spots.length - at : room;
      const fits = left.findIndex((own) => own.plants <= free);
      const [own] = left.splice(Math.max(0, fits), 1);
      if (!own) break;
      const here = Math.min(own.plants, free);
      if (here < own.plants) left.unshift({ ...own, plants: own.plants - here });
      const key = `${h}/${spot.bed.id}`;
      const block = blocks.get(key) ?? blocks.size;
      blocks.set(key, block);
      plants.push({ variety: own.variety, plants: here, spot, block });
      at += here;
    }
  });
  return plants;
}
