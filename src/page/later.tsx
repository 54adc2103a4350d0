import { type Component, type JSX, lazy, Suspense } from 'solid-js';

/**
 * What the sheet can do without in its first moment: drawings, plots, workings and the list of sources. They come in
 * chunks of their own, asked for at once but not waited for, so that inputs and verdicts stand before they arrive.
 */
function part<P extends Record<string, unknown>>(load: () => Promise<Component<P>>): Component<P> {
  const Loaded = lazy(async () => ({ default: await load() }));
  return (props: P): JSX.Element => (
    <Suspense>
      <Loaded {...props} />
    </Suspense>
  );
}

const drawings = () => import('./drawings/index.ts');
const supplyPlots = () => import('./parts/SupplyPlots.tsx');
const working = () => import('./parts/Working.tsx');

export const AnswersStation = part(async () => (await import('./answers/AnswersStation.tsx')).AnswersStation);
export const BenchStation = part(async () => (await import('./stations/BenchStation.tsx')).BenchStation);
export const CaseDrawing = part(async () => (await drawings()).CaseDrawing);
export const ConverterDrawing = part(async () => (await drawings()).ConverterDrawing);
export const CycleDrawing = part(async () => (await drawings()).CycleDrawing);
export const DesignsPanel = part(async () => (await import('./designs/DesignsPanel.tsx')).DesignsPanel);
export const HeatLadder = part(async () => (await drawings()).HeatLadder);
export const PeopleDrawing = part(async () => (await drawings()).PeopleDrawing);
export const PlateMap = part(async () => (await import('./drawings/PlateMap.tsx')).PlateMap);
export const PowerPath = part(async () => (await drawings()).PowerPath);
export const SinkDrawing = part(async () => (await drawings()).SinkDrawing);
export const SinkStands = part(async () => (await drawings()).SinkStands);
export const StageDrawing = part(async () => (await drawings()).StageDrawing);
export const SupplyDrawing = part(async () => (await drawings()).SupplyDrawing);
export const Plot = part(async () => (await import('./parts/plot/Plot.tsx')).Plot);
export const Working = part(async () => (await working()).Working);
export const FusePlot = part(async () => (await supplyPlots()).FusePlot);
export const ConverterPlots = part(async () => (await supplyPlots()).ConverterPlots);
export const SourceOf = part(async () => (await working()).SourceOf);
const peopleTables = () => import('./parts/PeopleTables.tsx');
export const ExposureTable = part(async () => (await peopleTables()).ExposureTable);
export const PeopleTables = part(async () => (await peopleTables()).PeopleTables);
export const ComparePanel = part(async () => (await import('./compare/ComparePanel.tsx')).ComparePanel);
export const PrintPanel = part(async () => (await import('./print/PrintPanel.tsx')).PrintPanel);
export const LabelSheet = part(async () => (await import('./print/LabelSheet.tsx')).LabelSheet);
