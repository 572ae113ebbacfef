import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Is there a program of that name on the search path? */
export function hasProgram(
  command: string,
  env: Readonly<Record<string, string | undefined>>,
): boolean {
  return (env.PATH ?? '').split(delimiter).some((folder) => {
    try {
      accessSync(join(folder, command), constants.X_OK);
      return folder !== '';
    } catch {
      return false;
    }
  });
}
