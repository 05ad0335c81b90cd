import type { PartId } from '../../../shared/base/ids.ts';
import { holdingsOf, proposeOrder } from '../../../shared/machining/route/propose-order.ts';
import { nameOfId, reasonWords } from '../machining/reason-words.ts';
import type { OrderAnswer } from '../machining/route-models.ts';
import type { Ask } from '../view.ts';

/** An order of a part's operations that has all that is needed, with the fewest holdings; or why there is none. */
export const proposeOrderAsk: Ask<{ readonly part: PartId }, OrderAnswer | undefined> = (scene, { part }) => {
  const facts = scene.works.factsOf(part);
  if (facts === undefined) return undefined;
  const list = facts.operations.map(({ record }) => record);
  const { constraints } = facts.route;
  const proposal = proposeOrder(list, constraints);
  if (proposal.is === 'ring') {
    return {
      is: 'ring',
      reasons: proposal.ring.map((one) => `${nameOfId(scene, one.next)}: ${reasonWords(scene, one)}`),
    };
  }
  const { order, holdings, fewest, dropped } = proposal;
  return {
    is: 'order',
    isSame: order.every((id, i) => id === list[i]?.id),
    holdings,
    holdingsNow: holdingsOf(list),
    fewest,
    dropped: dropped.map((one) => `${nameOfId(scene, one.next)}: ${reasonWords(scene, one)}`),
    rows: order.map((id) => {
      const record = list.find((one) => one.id === id)!;
      return {
        id,
        name: record.name,
        setup: record.setup === undefined ? 'at the bench' : nameOfId(scene, record.setup),
        now: list.indexOf(record) + 1,
        reasons: constraints.filter(({ next }) => next === id).map((one) => reasonWords(scene, one)),
      };
    }),
  };
};
