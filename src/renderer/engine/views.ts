import { bodyPreviewAsk } from './asks/body-preview.ts';
import { codeSolidAsk } from './asks/code-solid.ts';
import { exportAsk } from './asks/export.ts';
import { exportSolidAsk } from './asks/export-solid.ts';
import { findAsk } from './asks/find.ts';
import { namesAsk } from './asks/names.ts';
import { pictureAsk } from './asks/picture.ts';
import { previewAsk } from './asks/preview.ts';
import { previewCsvAsk } from './asks/preview-csv.ts';
import { proposeOrderAsk } from './asks/propose-order.ts';
import { readCsvAsk } from './asks/read-csv.ts';
import { readJsonAsk } from './asks/read-json.ts';
import { seenWorkAsk } from './asks/seen-work.ts';
import { solidHomeAsk } from './asks/solid-home.ts';
import { stationsAsk } from './asks/stations.ts';
import type { Ask, View } from './view.ts';
import { bodiesView } from './views/bodies.ts';
import { findingsView } from './views/findings.ts';
import { holesView } from './views/holes.ts';
import { linksView } from './views/links.ts';
import { machinesView } from './views/machines.ts';
import { materialsView } from './views/materials.ts';
import { openedView } from './views/opened.ts';
import { partView } from './views/part.ts';
import { reachView } from './views/reach.ts';
import { routeView } from './views/route.ts';
import { setupView } from './views/setup.ts';
import { setupsView } from './views/setups.ts';
import { sheetView } from './views/sheet.ts';
import { solidView } from './views/solid.ts';
import { summaryView } from './views/summary.ts';
import { traceView } from './views/trace.ts';

/** Every view that the window can watch. A department adds its own here. */
export const views = {
  summary: summaryView,
  part: partView,
  findings: findingsView,
  trace: traceView,
  bodies: bodiesView,
  solid: solidView,
  sheet: sheetView,
  links: linksView,
  opened: openedView,
  materials: materialsView,
  reach: reachView,
  machines: machinesView,
  setups: setupsView,
  setup: setupView,
  route: routeView,
  holes: holesView,
} as const satisfies Record<string, View<never, unknown>>;

/** Every question that the window can ask once. */
export const asks = {
  preview: previewAsk,
  names: namesAsk,
  find: findAsk,
  export: exportAsk,
  picture: pictureAsk,
  'body-preview': bodyPreviewAsk,
  'preview-csv': previewCsvAsk,
  'read-csv': readCsvAsk,
  'read-json': readJsonAsk,
  'solid-home': solidHomeAsk,
  'code-solid': codeSolidAsk,
  'export-solid': exportSolidAsk,
  stations: stationsAsk,
  'seen-work': seenWorkAsk,
  'propose-order': proposeOrderAsk,
} as const satisfies Record<string, Ask<never, unknown>>;

export type ViewName = keyof typeof views;
export type ViewParams<N extends ViewName> = (typeof views)[N] extends View<infer P, unknown> ? P : never;
export type ViewModel<N extends ViewName> = (typeof views)[N] extends View<never, infer M> ? M : never;
export type AskName = keyof typeof asks;
export type AskParams<N extends AskName> = Parameters<(typeof asks)[N]>[1];
export type AskAnswer<N extends AskName> = Awaited<ReturnType<(typeof asks)[N]>>;
