import { z } from 'zod';
import { err, ok, type Result } from '../../shared/base/result.ts';
import { inListOrder } from '../../shared/build/look-up.ts';
import { type Machine, machineSchema } from '../../shared/build/machine.ts';
import { machineAsKept } from '../../shared/build/machine-as-kept.ts';
import type { BadItem, KeptTextFault } from './kept-list.ts';

const SHOP_FORMAT = 'waywright-shop';
/** Raised when a reader of the version before would misread or refuse the file. */
export const SHOP_VERSION = 1;

const headSchema = z.object({
  format: z.literal(SHOP_FORMAT),
  version: z.number().int().min(1),
  machines: z.array(z.unknown()),
});

export interface ShopText {
  /** In list order, each id once. */
  readonly machines: readonly Machine[];
  readonly bad: readonly BadItem[];
}

/** Reads the text of a shop file; machines that cannot be read are told apart from those that can. */
export function readShopText(text: string): Result<ShopText, KeptTextFault> {
  let raw: unknown;
  try {
    // Some editors put a byte order mark before the text.
    raw = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return err({ code: 'damaged', detail: text.trim() === '' ? 'it is empty' : 'it is no JSON' });
  }
  const head = headSchema.safeParse(raw);
  if (!head.success) return err({ code: 'damaged', detail: 'it holds something else' });
  const { version, machines: rows } = head.data;
  if (version > SHOP_VERSION) return err({ code: 'newer-version', version });
  const machines = new Map<string, Machine>();
  const bad: BadItem[] = [];
  for (const [i, row] of rows.entries()) {
    const parsed = machineSchema.safeParse(row);
    const name = nameIn(row) ?? `number ${i + 1}`;
    if (!parsed.success) {
      const issue = parsed.error.issues[0];
      bad.push({ name, detail: `${issue?.path.join('/') ?? ''}: ${issue?.message ?? 'not as expected'}` });
    } else if (machines.has(parsed.data.id)) bad.push({ name, detail: `the id ${parsed.data.id} stands there twice` });
    else {
      // The program writes every length with its unit; a hand that left it out meant mm.
      const kept = machineAsKept(parsed.data, 'mm');
      machines.set(parsed.data.id, kept.ok ? kept.value : parsed.data);
    }
  }
  return ok({ machines: [...machines.values()].sort(inListOrder), bad });
}

const nameIn = (row: unknown): string | undefined =>
  typeof row === 'object' && row !== null && 'name' in row && typeof row.name === 'string' && row.name !== ''
    ? row.name
    : undefined;

/** Writes a shop as its file holds it: one machine to a line. */
export function writeShopText(machines: readonly Machine[]): string {
  const lines = machines.map((machine) => `    ${JSON.stringify(machineSchema.parse(machine))}`);
  const list = lines.length === 0 ? '[]' : `[\n${lines.join(',\n')}\n  ]`;
  return `{\n  "format": "${SHOP_FORMAT}",\n  "version": ${SHOP_VERSION},\n  "machines": ${list}\n}\n`;
}
