import type { OrderConstraint } from '../../../shared/machining/route/order-constraints.ts';
import { formatQuantity } from '../../../shared/quantity/format.ts';
import type { Scene } from '../view.ts';

/** The name of whatever an id stands for. */
export function nameOfId({ index }: Scene, id: string): string {
  const record =
    index.station(id as never) ??
    index.dimension(id as never) ??
    index.body(id as never) ??
    index.operation(id as never) ??
    index.setup(id as never);
  return record?.name ?? 'something removed';
}

/** Why one operation has to come before another, said at the later one: `after turn foot, which makes foot`. */
export function reasonWords(scene: Scene, { first, next, soft, why }: OrderConstraint): string {
  const name = (id: string) => nameOfId(scene, id);
  const before = name(first);
  const words = ((): string => {
    switch (why.is) {
      case 'from':
        return `after ${before}, which makes ${name(why.surface)} that it is measured from`;
      case 'held':
        return `after ${before}, which makes ${name(why.surface)} that ${name(why.setup)} holds it by`;
      case 'after':
        return `after ${before}, as written`;
      case 'state':
        return `after ${before}: ${name(why.setup)} begins from that state`;
      case 'hole':
        return `after ${before}, which opens ${name(why.body)}`;
      case 'stock':
        return `after ${before}, which leaves more stock on ${name(why.thing)}`;
      case 'gone':
        return `after ${before}: ${name(next)} cuts away ${name(why.surface)}, which that still needs`;
      case 'datum':
        return `after ${before}, which makes the datum ${name(why.datum)}`;
      case 'thin': {
        const metal = formatQuantity(why.metalMm, 'length', { unit: scene.index.settings().lengthUnit });
        return `after ${before}: ${metal} of metal beside ${name(why.body)} is left when ${name(why.beside)} is cut`;
      }
    }
  })();
  return soft ? `${words} (good practice)` : words;
}
