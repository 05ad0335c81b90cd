import { LARGEST_FORCE_SHARE } from '../../../machining/practice.ts';
import { definePartRule, type Said } from '../../rule.ts';

/** A hundred turns are nothing to speak of; these are those of a machine that turns no slower. */
const rounded = (rpm: number): number => Math.floor(rpm);

/**
 * Work that turns off its balance shakes the lathe: safe is what keeps the force under a share of the weight (common practice, no source). Said where
 * an operation is to turn faster, or the machine turns no slower.
 */
export default definePartRule({
  id: 'out-of-balance',
  title: 'Work that turns out of balance',
  department: 'machining',
  severity: 'caution',
  shuts: ['machine'],
  acceptable: true,
  needs: ['part', 'setups', 'operations'],
  messages: {
    fast: '{operation} of {part} is to turn at {asked} rpm in {setup}, and out of balance by {off} it should turn no faster than {most} rpm: the force would pass {share} of its weight (common practice, no source).',
    always:
      '{part} is out of balance by {off} in {setup}: it should turn no faster than {most} rpm (common practice, no source), and {machine} turns no slower than {asked} rpm.',
  },
  remedies: {
    fast: 'Turn slower, or bolt {weight} on opposite, and turn the spindle by hand first.',
    always: 'Bolt {weight} on opposite and look again, or machine it on another machine.',
  },

  check: ({ part, setups, operations }) =>
    setups.flatMap(({ check: { setup, balance }, machine, slowestRpm }): readonly Said<'fast' | 'always'>[] => {
      if (!balance || balance.highestRpm === Infinity) return [];
      const most = rounded(balance.highestRpm);
      const { counterweightKg, counterweightRadiusMm, eccentricityMm } = balance;
      const weight =
        counterweightKg === undefined || counterweightRadiusMm === undefined
          ? 'a weight'
          : `${counterweightKg.toPrecision(2)} kg at ${Math.round(counterweightRadiusMm)} mm`;
      const data = { part: part.name, setup: setup.name, most, weight, offMm: Math.round(eccentricityMm * 100) / 100 };
      if (slowestRpm !== undefined && slowestRpm > balance.highestRpm) {
        const asked = rounded(slowestRpm);
        return [
          { message: 'always', at: [setup.id], data: { ...data, asked, machine: machine?.name ?? 'the machine' } },
        ];
      }
      return operations.flatMap(({ record, passes }): readonly Said<'fast'>[] => {
        if (record.setup !== setup.id) return [];
        const rpm = Math.max(0, ...passes.map((pass) => pass.rpm?.value ?? 0));
        if (rpm <= balance.highestRpm) return [];
        const share = `${Math.round(LARGEST_FORCE_SHARE * 100)} %`;
        const more = { operation: record.name, asked: rounded(rpm), share };
        return [{ message: 'fast', at: [setup.id, record.id], data: { ...data, ...more } }];
      });
    }),
});
