/** Leaves exit status 2 where an output cannot be written, and says so where its reader is still there. */
export function tellWriteErrors(stdout: NodeJS.WriteStream): void {
  stdout.on('error', (error: NodeJS.ErrnoException) => {
    // A reader that has seen enough, as in `holdfast history | head -1`, is no error, and neither
    // is a window that was closed.
    const isGone = error.code === 'EPIPE' || (error.code === 'EIO' && stdout.isTTY);
    if (isGone) return;
    process.stderr.write(`Nothing could be written: ${error.code}.\n`);
    process.exitCode = 2;
  });
}
