import { unreachable } from '../base/assert.ts';
import { refusalWords } from '../build/refusals.ts';
import type { ShopError, ShopLoss } from './shop-contract.ts';

interface Words {
  readonly sentence: string;
  readonly remedy: string;
}

/** Says why the user's shop could not be read or changed, and what to do. */
export function shopWords(error: ShopError): Words {
  switch (error.code) {
    case 'newer-version':
      return {
        sentence: `The file of your machines has form ${error.version}; this version reads forms up to ${error.newest}. It was not changed.`,
        remedy: `Use the newer version of the program, or move ${error.path} to another place.`,
      };
    case 'unreadable':
      return {
        sentence: `The file of your machines could not be read: ${error.detail}. It was not changed.`,
        remedy: `Check that you may read ${error.path}, then try again.`,
      };
    case 'disk-full':
      return {
        sentence: 'The disk is full, so that your shop could not be kept. What it held before is whole.',
        remedy: `Make room on the disk of ${error.path}, then try again.`,
      };
    case 'unwritable':
      return {
        sentence: `Your shop could not be kept: ${error.detail}. What it held before is whole.`,
        remedy: `Check that you may write ${error.path}, then try again.`,
      };
    case 'refused':
      return refusalWords(error.refusal);
    default:
      return unreachable(error);
  }
}

/** Says what of the shop was set aside, and what to do. */
export function shopLossWords(loss: ShopLoss): Words {
  if (loss.is === 'gone') {
    return {
      sentence: 'The file of your machines is gone. Your machines are those of its last good copy.',
      remedy: `If they were meant to be gone, remove them one by one; the copy lies in ${loss.path}.`,
    };
  }
  const remedy = `What could not be read lies whole in ${loss.path}.`;
  if (loss.is === 'machine') {
    return { sentence: `The machine “${loss.name}” of your shop could not be read (${loss.detail}).`, remedy };
  }
  const instead = loss.hadCopy
    ? 'Your machines are those of its last good copy: look whether the last change is among them.'
    : 'There was no earlier copy, so that your shop begins anew.';
  return { sentence: `The file of your machines could not be read (${loss.detail}). ${instead}`, remedy };
}
