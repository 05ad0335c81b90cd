import type { RecordKind } from '../../../shared/build/records.ts';
import { acceptanceTable } from './acceptance.ts';
import { alloyTable } from './alloy.ts';
import { bodyTable } from './body.ts';
import { castingTable } from './casting.ts';
import { dimensionTable } from './dimension.ts';
import { machineTable } from './machine.ts';
import { materialTable } from './material.ts';
import { operationTable } from './operation.ts';
import { partTable } from './part.ts';
import { patternTable } from './pattern.ts';
import { pourTable } from './pour.ts';
import type { RecordTable } from './record-table.ts';
import { settingsTable } from './settings.ts';
import { setupTable } from './setup.ts';
import { solidTable } from './solid.ts';
import { stationTable } from './station.ts';

/** The table of each kind of record; a kind without one is a compile error here. */
export const tableOf = {
  settings: settingsTable,
  material: materialTable,
  alloy: alloyTable,
  machine: machineTable,
  part: partTable,
  station: stationTable,
  dimension: dimensionTable,
  solid: solidTable,
  body: bodyTable,
  setup: setupTable,
  operation: operationTable,
  casting: castingTable,
  pattern: patternTable,
  pour: pourTable,
  acceptance: acceptanceTable,
} as const satisfies Record<RecordKind, RecordTable>;
