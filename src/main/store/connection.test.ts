import { afterAll, beforeAll, expect, test } from 'vitest';
import { BugError } from '../../shared/base/assert.ts';
import { type Connection, connect } from './connection.ts';

let connection: Connection;
beforeAll(async () => {
  connection = await connect(':memory:', 'create');
  await connection.script('create table t (id integer primary key, a)');
});
afterAll(() => connection.close());

test('cells come back as they went in; whole numbers of any kind are numbers', async () => {
  for (const [given, back] of [
    ['text', 'text'],
    [1.5, 1.5],
    [2n ** 53n - 1n, 2 ** 53 - 1],
    [true, 1],
    [null, null],
    [undefined, null],
  ]) {
    const [row] = await connection.all('select ? as cell', [given]);
    expect(row).toEqual({ cell: back });
  }
});

test.each([[2n ** 53n + 1n], [Number.NaN], [Number.POSITIVE_INFINITY], [{}], [new Date(0)]])(
  'a value that the file cannot keep is a bug, never a silent NULL: %s',
  async (value) => {
    await expect(connection.all('select ? as cell', [value])).rejects.toThrow(BugError);
    await expect(connection.run('insert into t (a) values (?)', [value])).rejects.toThrow(BugError);
    expect(await connection.all('select * from t')).toEqual([]);
  },
);

test('an error leaves nothing open behind it', async () => {
  await expect(connection.all('select * from nowhere')).rejects.toMatchObject({ code: 'SQLITE_ERROR' });
  await connection.run('insert into t values (1, 1)');
  await expect(connection.run('insert into t values (1, 2)')).rejects.toMatchObject({ code: 'SQLITE_CONSTRAINT' });
  await connection.run('delete from t');
});

test('no second file can be attached', async () => {
  await expect(connection.run(`attach ':memory:' as other`)).rejects.toThrow('too many attached databases');
});
