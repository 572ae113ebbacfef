import { fileURLToPath } from 'node:url';
import { runCli } from './run-cli.ts';
import { systemPorts } from './workbench/system-ports.ts';

// The same from src/ and from dist/.
const shippedPrograms = fileURLToPath(new URL('../programs/', import.meta.url));

await runCli(systemPorts(shippedPrograms), process.argv.slice(2));
