import { expect, it } from 'vitest';
import { Glass, type GlassOptions } from './glass.ts';

async function noting(options?: GlassOptions): Promise<Glass> {
  const glass = new Glass(options);
  await glass.until('space begin');
  glass.type(' s');
  await glass.until('READY');
  glass.type('m\u001b[A ');
  await glass.until('keep the note');
  return glass;
}

const notes = (glass: Glass) =>
  glass.scene.facts().flatMap((fact) => (fact.type === 'note-written' ? [fact.text] : []));

it('a note typed in one burst loses no letter, and its keys are no commands', async () => {
  const glass = await noting();
  glass.type('quiet knees, 5 more? yes');
  await glass.until('quiet knees, 5 more? yes');
  glass.type('\r');
  await glass.until('READY');
  expect(notes(glass)).toEqual(['quiet knees, 5 more? yes']);
  glass.type('q');
  await glass.end;
});

it('a note and its enter in one chunk are kept', async () => {
  const glass = await noting();
  glass.type('belt on\r');
  await glass.until('READY');
  expect(notes(glass)).toEqual(['belt on']);
  glass.type('q');
  await glass.end;
});

it('a paste goes in as clean text', async () => {
  const glass = await noting();
  glass.type('\u001b[200~left\u001b[31m heel\r\nlifts\u001b[201~');
  await glass.until(/left.*heel.*lifts/);
  glass.type('\r');
  await glass.until('READY');
  expect(notes(glass)).toEqual(['left [31m heel lifts']);
  glass.type('q');
  await glass.end;
});

it('of a note longer than a small screen the end and the keys stay in sight', async () => {
  const glass = await noting({ columns: 34, rows: 16 });
  glass.type(`\u001b[200~${'word '.repeat(96)}end\u001b[201~`);
  await glass.until('end');
  const lines = (await glass.screen()).trimEnd().split('\n');
  expect(lines[0]?.trim()).toBe('Note: Back squat');
  expect(lines.at(-1)?.trim()).toBe('enter keep the note   esc back');
  expect(lines.at(-2)).toMatch(/end$/);
  glass.type('\r');
  await glass.until('READY');
  glass.type('q');
  await glass.end;
});

it('letters are mended with backspace and the arrows', async () => {
  const glass = await noting();
  glass.type('heals\u007f\u007f\u007fels\u001b[D\u001b[D\u001b[D!');
  await glass.until('he!els');
  glass.type('\r');
  await glass.until('READY');
  expect(notes(glass)).toEqual(['he!els']);
  glass.type('q');
  await glass.end;
});

it('escape goes back without a note', async () => {
  const glass = await noting();
  glass.type('no\u001b');
  glass.scene.clock.pass(100);
  await glass.until('READY');
  expect(notes(glass)).toEqual([]);
  glass.type('q');
  await glass.end;
});
