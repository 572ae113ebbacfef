import { demoHistory } from '../../src/workbench/demo.ts';
import type { AHome } from './a-home.ts';
import { workbenchOf } from './a-session.ts';

/** Gives the home the demo's twelve invented weeks, as if they were the lifter's own. */
export function withDemoWeeks(home: AHome): void {
  home.writeSettings({ cautions: 'read', weightAdvice: 'yes' });
  const workbench = workbenchOf(home);
  for (const events of demoHistory(workbench.program(), workbench.today(), 0)) {
    workbench.journal().importEvents(events);
  }
}
