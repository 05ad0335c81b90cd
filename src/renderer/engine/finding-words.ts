import { figuresOf } from '../../shared/check/finding.ts';
import type { Finding } from '../../shared/check/rule.ts';
import { findingWords } from '../../shared/check/words.ts';
import type { Scene } from './view.ts';

/** A finding in the reader's words and units, with the figures that an acceptance would be given at. */
export function wordsOfFinding(scene: Scene, finding: Finding) {
  return { ...findingWords(finding, scene.index.settings().lengthUnit), figures: figuresOf(finding.data) };
}
