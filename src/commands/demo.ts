import { withDemo } from '../lifter/demo.ts';
import { Refusal } from '../text/problem.ts';
import type { Run } from './call.ts';
import { main } from './main.ts';

/** Opens the whole program, or runs one command, on twelve invented weeks in a temporary folder. */
export const run: Run = ({ argv, global, ports, tell }) => {
  if (ports.demoFolder) throw new Refusal({ what: 'This is the demo already.' });
  if (global.data !== null) {
    throw new Refusal({
      what: 'The demo takes no --data.',
      why: 'Its invented weeks are never mixed with real data: they live in a temporary folder.',
    });
  }
  // What is behind "demo" is a command line of its own; options may stand before it, too.
  const at = argv.indexOf('demo');
  const rest = argv.filter((_, index) => index !== at);
  return withDemo(ports, async (demo) => {
    tell(
      `A demo: twelve invented weeks of a lifter losing fat, in ${demo.demoFolder}. The folder is removed when you leave.`,
    );
    return main(demo, rest);
  });
};
