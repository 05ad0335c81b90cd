import { randomBytes } from 'node:crypto';
import { call } from './call.ts';
import type { Surroundings } from './verb.ts';

/** The engine without a window: see `waywright help`. */

const surroundings: Surroundings = {
  async readStdin() {
    process.stdin.setEncoding('utf8');
    let text = '';
    for await (const chunk of process.stdin) text += chunk;
    return text;
  },
  colour: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
  random32: () => randomBytes(4).readUInt32LE(),
  now: () => new Date().toISOString(),
};

// Whoever reads the output may stop reading (a pager, `head`): that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

const result = await call(process.argv.slice(2), surroundings);
if (result.ok) {
  process.stdout.write(result.value.text);
  for (const remark of result.value.remarks ?? []) process.stderr.write(`${remark}\n`);
  process.exitCode = result.value.status;
} else {
  const { place, sentence, remedy } = result.error;
  const head = place === '' ? 'waywright' : `waywright: ${place}`;
  process.stderr.write(`${head}: ${sentence}\n${remedy.replace(/^/gm, '  ')}\n`);
  process.exitCode = 2;
}
