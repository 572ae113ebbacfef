import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeSettings } from '../settings/write-settings.ts';
import { demoHistory } from './demo-history.ts';
import { openWorkbench } from './open-workbench.ts';
import type { Ports } from './ports.ts';

/** Variables that would lead out of the demo's folder, into the lifter's own data. */
const LEADING_OUT: ReadonlySet<string> = new Set([
  'HOLDFAST_DATA',
  'XDG_DATA_HOME',
  'XDG_CONFIG_HOME',
  'XDG_STATE_HOME',
  'XDG_CACHE_HOME',
  'APPDATA',
  'LOCALAPPDATA',
]);

/**
 * Writes the demo into a new temporary folder and does something there, on ports that know no
 * other folder. The folder is removed again, whatever happens.
 */
export async function withDemo<Result>(
  ports: Ports,
  act: (demo: Ports & { readonly demoFolder: string }) => Promise<Result>,
): Promise<Result> {
  const folder = mkdtempSync(join(tmpdir(), 'holdfast-demo-'));
  try {
    const env = Object.fromEntries(
      Object.entries(ports.env).filter(([name]) => !LEADING_OUT.has(name)),
    );
    const data = join(folder, 'data');
    mkdirSync(data);
    const demo = {
      ...ports,
      env: { ...env, HOLDFAST_DATA: data },
      home: folder,
      demoFolder: folder,
    };
    writeDemo(demo);
    return await act(demo);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function writeDemo(ports: Ports): void {
  const workbench = openWorkbench(ports, { data: null, program: null });
  // The invented lifter has read the cautions, and has said that nothing speaks against losing weight.
  writeSettings(workbench.folders.config, { cautions: 'read', weightAdvice: 'yes' });
  const today = workbench.today();
  const zone = ports.clock.zone(ports.clock.read().wall);
  for (const events of demoHistory(workbench.program(), today, zone)) {
    workbench.journal().importEvents(events);
  }
}
