import module from 'node:module';
import { fileURLToPath } from 'node:url';

// The same from src/ and from dist/.
const shippedPrograms = fileURLToPath(new URL('../programs/', import.meta.url));

// Compiled code is kept from one start to the next, where this Node can (from 22.1).
module.enableCompileCache?.();

const [{ runCli }, { systemPorts }] = await Promise.all([
  import('./commands/run-cli.ts'),
  import('./workbench/system-ports.ts'),
]);

await runCli(systemPorts(shippedPrograms), process.argv.slice(2));
