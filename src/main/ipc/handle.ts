import { z } from 'zod';
import { BugError } from '../../shared/base/assert.ts';
import type { Channel, Request, Response } from '../../shared/ipc/contract.ts';
import { isOurPage } from '../app/policy.ts';

/** What the door reads of Electron's event. */
export interface IncomingEvent {
  readonly sender: { readonly id: number };
  readonly senderFrame: { readonly url: string; readonly parent: unknown } | null;
}

export interface IpcMainLike {
  handle(channel: string, listener: (event: IncomingEvent, payload: unknown) => Promise<unknown>): void;
}

/** The id of the web contents that asked; the handler finds its window by it. */
export type SenderId = number;

const isOurWindow = ({ senderFrame }: IncomingEvent): boolean =>
  senderFrame !== null && senderFrame.parent === null && isOurPage(senderFrame.url);

/**
 * The only place that touches `ipcMain`: checks the sender, then the payload, then calls the handler. A refusal here is
 * a bug or an attack, never something the user did, so it throws.
 */
export function handle<C extends Channel>(
  ipc: IpcMainLike,
  channel: C,
  schema: z.ZodType<Request<C>>,
  handler: (request: Request<C>, sender: SenderId) => Promise<Response<C>>,
): void {
  ipc.handle(channel, async (event, payload) => {
    if (!isOurWindow(event)) throw new BugError(`Refused '${channel}': it did not come from our window.`);
    const request = schema.safeParse(payload);
    if (!request.success) throw new BugError(`Refused '${channel}': ${z.prettifyError(request.error)}`);
    return handler(request.data, event.sender.id);
  });
}
