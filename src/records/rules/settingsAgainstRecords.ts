import { fileOnly } from '../../terms/place.ts';
import type { Season } from '../../terms/trial.ts';
import type { CheckContext } from '../../sheet/context.ts';
import type { VarietyRegistry } from '../registry.ts';

const SETTINGS = fileOnly('data/trial.yaml');

/** Reports settings that name varieties or seasons which the records do not have. */
export function reportSettingsAgainstRecords(
  registry: VarietyRegistry,
  seasons: readonly Season[],
  { settings, log }: CheckContext,
): void {
  for (const { id, checkVariety } of settings.classes.values()) {
    if (checkVariety === null) continue;
    const variety = registry.find(checkVariety);
    if (!variety) {
      const near = registry.nearest(checkVariety);
      log.add('unknown-variety', SETTINGS, checkVariety, near === null ? {} : { near });
    } else if (variety.classId !== id) {
      log.add('check-variety-elsewhere', SETTINGS, checkVariety, { class: id, other: variety.classId });
    }
  }
  const years = new Set(seasons.map(({ year }) => year));
  for (const year of settings.seasons.keys()) {
    if (!years.has(year)) log.add('season-setting-unused', SETTINGS, String(year));
  }
  for (const season of seasons) {
    for (const variety of registry.varieties) {
      if (variety.firstGrown === null || variety.firstGrown <= season.year) continue;
      if (!season.plantings.some((planting) => planting.variety === variety.id)) continue;
      log.add('first-grown-after-season', variety.place, String(variety.firstGrown), { season: String(season.year) });
    }
  }
}
