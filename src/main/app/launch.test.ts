import { expect, test } from 'vitest';
import { readLaunch } from './launch.ts';

test('a packaged program takes every plain argument as a file', () => {
  expect(readLaunch(['--enable-something', 'lathe.wayw', '/b/mill.wayw'], undefined, '/home/a')).toEqual({
    files: ['/home/a/lathe.wayw', '/b/mill.wayw'],
    example: undefined,
  });
});

test('under a bare runtime only what follows the program is ours', () => {
  const args = ['-r', '/driver/loader.js', '--log-level=3', '/src/waywright', 'lathe.wayw'];
  expect(readLaunch(args, '/src/waywright', '/home/a').files).toEqual(['/home/a/lathe.wayw']);
  expect(readLaunch(['.', 'lathe.wayw'], '/home/a', '/home/a').files).toEqual(['/home/a/lathe.wayw']);
});

test('an example is asked for by its state; an unknown one is not guessed', () => {
  expect(readLaunch(['--example=as-corrected'], undefined, '/').example).toBe('as-corrected');
  expect(readLaunch(['--example=something'], undefined, '/').example).toBeUndefined();
  expect(readLaunch([], undefined, '/')).toEqual({ files: [], example: undefined });
});
