/** CSV files whose form is hurt, accidents in spreadsheets, and what becomes of them: npm run bench:accidents (SHARE=0.1 for a tenth). */
import { ACCIDENTS, after } from '../accidents/accidents.ts';
import { chanceOf, demoFiles, fateOf, filesOf, outcomeOf, sheetsOf } from '../accidents/sheets.ts';
import type { Fate } from '../accidents/sheets.ts';
import { cleanGarden } from '../accidents/gardens.ts';
import { POLLUTIONS } from '../accidents/pollutions.ts';

const say = (text: string): void => void process.stdout.write(`${text}\n`);
const share = Number(process.env['SHARE'] ?? 1);
const files = demoFiles();
const clean = outcomeOf(files);
if (clean.problems.length > 0) throw new Error(`the demo has a problem: ${clean.problems[0]!.code}`);

function pollutions(each: number): void {
  const paths = [...files.keys()].filter((path) => path.endsWith('.csv'));
  const total: Record<Fate, number> = { told: 0, 'the same': 0, silent: 0 };
  for (const { kind, pollute } of POLLUTIONS) {
    const fates: Record<Fate, number> = { told: 0, 'the same': 0, silent: 0 };
    const silent: string[] = [];
    for (let i = 0; i < each; i++) {
      const chance = chanceOf(`${kind} ${i}`);
      const path = chance.pick(paths);
      const fate = fateOf(
        new Map<string, string | Uint8Array>(files).set(path, pollute(files.get(path)!, chance)),
        clean,
      );
      fates[fate]++;
      total[fate]++;
      if (fate === 'silent') silent.push(`${path} ${i}`);
    }
    say(
      `${kind.padEnd(44)} told ${fates.told}, the same ${fates['the same']}, silent ${fates.silent} ${silent.slice(0, 3).join('; ')}`,
    );
  }
  say(`all ${POLLUTIONS.length * each}: told ${total.told}, the same ${total['the same']}, silent ${total.silent}`);
}

function accidents(each: number): void {
  const sheets = sheetsOf(files);
  const total = { cases: 0, told: 0, 'the same': 0, silent: 0, seen: 0, 'seen and told': 0 };
  for (const accident of ACCIDENTS) {
    const fates: Record<Fate, number> = { told: 0, 'the same': 0, silent: 0 };
    const silent: string[] = [];
    for (let i = 0, tries = 0; i < each && tries < 20 * each; tries++) {
      const changed = after(accident, sheets, chanceOf(`${accident.kind} ${tries}`));
      if (!changed) continue;
      i++;
      const fate = fateOf(filesOf(changed.sheets, files), clean);
      fates[fate]++;
      total[fate]++;
      total.cases++;
      if (fate === 'silent') silent.push(`${changed.path} ${tries}`);
    }
    const part = fates.silent === 0 ? 1 : fates.told / (fates.told + fates.silent);
    if (accident.isSeen) {
      total.seen += fates.told + fates.silent;
      total['seen and told'] += fates.told;
    }
    const mark = accident.isSeen && part < 0.95 ? '!' : ' ';
    say(
      `${mark} ${accident.kind.padEnd(44)} ${accident.isSeen ? 'seen' : '    '} told ${fates.told}, the same ${fates['the same']}, silent ${fates.silent} ${silent.slice(0, 3).join('; ')}`,
    );
  }
  say(`all ${JSON.stringify(total)}`);
}

function falseAlarms(count: number): void {
  let [gardens, alarms] = [0, 0];
  for (let i = 0; i < count; i++) {
    const { problems } = outcomeOf(cleanGarden(i));
    if (problems.length > 0) gardens++;
    alarms += problems.length;
    for (const { code, found, facts, places } of problems)
      say(`  garden ${i}: ${code} ${found} ${JSON.stringify(facts)} ${places[0]!.file}:${places[0]!.line}`);
  }
  say(`clean gardens ${count}: false alarms ${alarms} in ${gardens}`);
}

falseAlarms(Math.max(1, Math.round(200 * share)));
accidents(Math.max(1, Math.round(30 * share)));
pollutions(Math.max(1, Math.round(100 * share)));
