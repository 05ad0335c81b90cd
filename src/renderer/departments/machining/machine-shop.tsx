import { useEffect } from 'react';
import type { MachineId, OperationId, SetupId } from '../../../shared/base/ids.ts';
import { usePlace } from '../../app/place.ts';
import { Tabs } from '../../kit/tabs.tsx';
import { Cautions } from './cautions.tsx';
import { MachinesDesk } from './machines/machines-desk.tsx';
import { type Desk, setMachining, useMachining } from './machining-state.ts';
import { RouteDesk } from './route/route-desk.tsx';
import { SetupsDesk } from './setups/setups-desk.tsx';

const tabs: readonly { readonly value: Desk; readonly label: string }[] = [
  { value: 'setups', label: 'Set-ups' },
  { value: 'route', label: 'Route' },
  { value: 'machines', label: 'Machines' },
];

/** The Machine Shop: will it swing, can the tool reach, in which order. */
export function MachineShop() {
  const { desk } = useMachining();
  useSubject();
  return (
    <div className="machining">
      <div className="machining-strip">
        <Tabs
          label="Desk"
          panel="machining-desk"
          value={desk}
          onChange={(next) => setMachining({ desk: next })}
          tabs={tabs}
        />
        <Cautions />
      </div>
      <div
        id="machining-desk"
        className="machining-desk"
        role="tabpanel"
        aria-label={tabs.find(({ value }) => value === desk)?.label}
      >
        {desk === 'setups' && <SetupsDesk />}
        {desk === 'route' && <RouteDesk />}
        {desk === 'machines' && <MachinesDesk />}
      </div>
    </div>
  );
}

/** What is selected elsewhere (a finding that points at a set-up) is brought to its desk. */
function useSubject(): void {
  const { subject } = usePlace();
  useEffect(() => {
    if (subject?.startsWith('setup:')) setMachining({ desk: 'setups', setup: subject as SetupId });
    else if (subject?.startsWith('operation:')) setMachining({ desk: 'route', operation: subject as OperationId });
    else if (subject?.startsWith('machine:')) setMachining({ desk: 'machines', machine: subject as MachineId });
  }, [subject]);
}
