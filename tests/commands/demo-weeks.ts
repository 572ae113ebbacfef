import { demoHistory } from '../../src/lifter/demo.ts';
import type { AHome } from './a-home.ts';
import { lifterOf } from './a-session.ts';

/** Gives the home the demo's twelve invented weeks, as if they were the lifter's own. */
export function withDemoWeeks(home: AHome): void {
  home.writeSettings({ cautions: 'read', weightAdvice: 'yes' });
  const lifter = lifterOf(home);
  for (const events of demoHistory(lifter.program(), lifter.today(), 0)) {
    lifter.journal().importEvents(events);
  }
}
