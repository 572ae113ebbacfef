import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readKept, writeKept } from '../../src/journal/disk/kept-file.ts';
import { keptProgram } from '../../src/lifter/kept-program.ts';
import { readProgram } from '../../src/program/read-program.ts';
import { memoryDisk } from '../journal/memory-files.ts';

const SHIPPED = readdirSync('programs')
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => [name, readFileSync(`programs/${name}`, 'utf8')] as const);

const OWN = `
name: Own lifts
unit: kg
lifts:
  sled-push:
    { name: Sled push, loading: free, kind: compound, pattern: squat, trains: { quads: 1, glutes: 0.5 } }
days:
  - name: A
    exercises:
      - { lift: sled-push, sets: 3, reps: 8-12, pair: a }
      - { lift: crunch, cluster: { lead: 12-15, rest: 10-15 s, most_sets: 4 } }
      - { lift: plank, sets: 2, seconds: 30-60, sides: each }
      - { lift: split-squat, sets: 2, reps: 8-12, sides: both, note: in turn }
`;

const PATH = '/cache/program.kept';
const opened = (disk = memoryDisk()) => ({
  disk,
  read: keptProgram(disk.files, '/cache', () => 'x'),
});

describe('a program that was read before', () => {
  it.each(SHIPPED)('is the same when it is read again: %s', (name, text) => {
    const { read } = opened();
    const first = read(text, name);
    const again = read(text, `other/${name}`);
    if (!first.ok || !again.ok) throw new Error('A shipped program cannot be read.');
    expect(again.program).toEqual({ ...first.program, file: `other/${name}` });
    expect(first).toEqual(readProgram(text, name));
    for (const { exercises } of again.program.days) {
      for (const { lift } of exercises) expect(again.program.lifts.get(lift.key)).toBe(lift);
    }
  });

  it('keeps lifts of its own', () => {
    const { disk, read } = opened();
    const plain = readProgram(OWN, 'own.yaml');
    if (!plain.ok) throw new Error(JSON.stringify(plain.problems));
    expect(read(OWN, 'own.yaml')).toEqual(plain);
    expect(disk.files.read(PATH)).not.toBeNull();
    expect(read(OWN, 'own.yaml')).toEqual(plain);
  });

  it('is read anew once its text is another, also back again, and with mistakes each time', () => {
    const { read } = opened();
    for (const reps of ['8-12', '6-10', '8-12', 'many', '6-10']) {
      const text = OWN.replace('8-12', reps);
      expect(read(text, 'own.yaml')).toEqual(readProgram(text, 'own.yaml'));
    }
  });

  it('is read from its text where what was kept is damaged anywhere', () => {
    const plain = readProgram(OWN, 'own.yaml');
    const { disk, read } = opened();
    read(OWN, 'own.yaml');
    const whole = disk.files.read(PATH);
    if (!whole) throw new Error('Nothing was kept.');
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 }), (at, by) => {
        const damaged = Uint8Array.from(whole);
        damaged[at] = (damaged[at] ?? 0) ^ by;
        const other = opened();
        other.disk.files.makeFolder('/cache');
        const file = other.disk.files.create(PATH);
        other.disk.files.write(file, damaged, 0);
        other.disk.files.close(file);
        expect(other.read(OWN, 'own.yaml')).toEqual(plain);
      }),
      { numRuns: 60 },
    );
  });

  it('is read from its text where a whole file holds what cannot be parsed', () => {
    const plain = readProgram(OWN, 'own.yaml');
    const { disk, read } = opened();
    read(OWN, 'own.yaml');
    const kept = new TextDecoder().decode(disk.files.read(PATH) ?? new Uint8Array());
    const head = kept.slice('01234567 '.length, kept.indexOf('\n'));
    const place = { folder: '/cache', path: PATH, random: () => 'y' };
    writeKept(disk.files, place, head, '{ "days": 3 }');
    expect(readKept(disk.files, PATH, head, JSON.parse)).toEqual({ days: 3 });
    expect(read(OWN, 'own.yaml')).toEqual(plain);
  });
});
