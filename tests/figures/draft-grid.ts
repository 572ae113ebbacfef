import { draftProgram } from '../../src/program/draft/draft-program.ts';
import { draftFaults, GRID } from '../program/draft-faults.ts';

/** Every draft of the grid: how many have a fault, and how long one takes. */
const rows = new Map<string, { drafts: number; faults: string[]; longest: number; sum: number }>();
let faulty = 0;
for (const wishes of GRID) {
  const from = performance.now();
  const draft = draftProgram(wishes);
  const took = performance.now() - from;
  const found = draftFaults(draft, wishes);
  for (const key of [wishes.name, `${wishes.minutes} min`, wishes.aim, `${wishes.days} days`]) {
    const row = rows.get(key) ?? { drafts: 0, faults: [], longest: 0, sum: 0 };
    row.drafts += 1;
    row.sum += took;
    row.longest = Math.max(row.longest, took);
    if (found.length > 0) row.faults.push(found.join(', '));
    rows.set(key, row);
  }
  if (found.length > 0) {
    faulty += 1;
    const hurts = wishes.hurts[0] ?? 'nothing';
    const what = `${wishes.days} × ${wishes.minutes} min, ${wishes.name}, ${wishes.aim}, ${hurts} hurts`;
    if (faulty <= 40) console.log(`${what}: ${found.join(', ')}`);
  }
}
console.log(`${GRID.length} drafts, ${faulty} with a fault`);
for (const [key, { drafts, faults, longest, sum }] of rows) {
  const cells = [drafts, faults.length, (sum / drafts).toFixed(1), longest.toFixed(0)];
  console.log(`${key.padEnd(36)} ${cells.map((cell) => String(cell).padStart(7)).join('')}`);
}
process.exitCode = faulty > 0 ? 1 : 0;
