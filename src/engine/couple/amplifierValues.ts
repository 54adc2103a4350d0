import type { Design } from '../../../shared/design/schema.ts';
import { driveForFundamental, halfConductionAngle } from '../amplifier/conductionAngle.ts';
import type { LinearStage } from '../amplifier/linearStage.ts';
import { drainPeakVoltage, reflectionOfSwr } from '../amplifier/mismatch.ts';
import { devicesInSeries } from '../amplifier/stageLoad.ts';
import type { PowerPoint } from './feed.ts';
import type { Final } from './final.ts';

type Entries = Readonly<Record<string, number | null | undefined>>;

/** Amplitude at which the device's current is shown beside that at PEP: 6 dB down. */
export const backOffAmplitude = 0.5;

/** What the load is, through transformer, network and mismatch. */
export function loadEntries(design: Design, final: Final): Entries {
  const { amplifier } = design;
  return {
    swr: amplifier.swr,
    reflectionAtAntenna: reflectionOfSwr(amplifier.swr),
    reflectionAtDevices: reflectionOfSwr(final.load.swr),
    swrAtDevices: final.load.swr,
    networkShare: final.load.transmission,
    foldback: final.load.foldback,
    loadSharing: devicesInSeries(amplifier.arrangement, design.device.count),
    maximumVoltage: design.device.maximumVoltage,
  };
}

/** The final at the peak of the envelope. */
export function pepEntries(design: Design, final: Final, point: PowerPoint, junction: number): Entries {
  const forward = point.rfPower * final.load.swr;
  const matchedHeat = point.dcPower - forward;
  const stage = final.stageAt(junction);
  const swing = stage ? Math.sqrt((2 * forward * stage.loadPerDevice) / stage.deviceCount) : null;
  return {
    forwardAtDevices: forward,
    pepAtDevices: point.rfPower,
    pep: point.antenna,
    networkLossPep: point.networkHeat,
    deviceHeatPep: point.deviceHeat,
    deviceHeatMatched: matchedHeat + point.drive,
    deviceHeatLeast: matchedHeat / final.load.swr + point.drive,
    drainEfficiencyPep: point.dcPower > 0 ? point.rfPower / point.dcPower : null,
    drainPeakVoltage: peakVoltage(design, final, point, swing),
    ...(stage && swing !== null ? stageEntries(stage, final, point, forward, swing) : {}),
    ...(stage && swing !== null ? pictureEntries(stage, swing) : {}),
  };
}

/** Upper estimate of the voltage at a device, V; for a measured stage the whole rail is taken as its swing. */
function peakVoltage(design: Design, final: Final, point: PowerPoint, swing: number | null): number {
  return drainPeakVoltage(
    design.amplifier.class,
    point.railVoltage,
    swing ?? point.railVoltage,
    final.load.swr,
  );
}

function stageEntries(
  stage: LinearStage,
  final: Final,
  point: PowerPoint,
  forward: number,
  swing: number,
): Entries {
  const limit = point.railVoltage - stage.knee;
  return {
    loadPerDevice: stage.loadPerDevice,
    kneeVoltage: stage.knee,
    fundamentalVoltage: swing,
    fundamentalCurrent: swing / stage.loadPerDevice,
    swingLimit: limit > 0 ? limit : null,
    swingUsed: limit > 0 ? swing / limit : null,
    fullPower: (forward / final.load.foldback) as number,
  };
}

/** Turns ratios that belong to the load and to a full swing, for push-pull and single sides alike. */
export function turnsEntries(values: Readonly<Record<string, number>>): Entries {
  const { loadPerDevice, loadSharing, swingLimit, fullPower, deviceCount } = values;
  if (loadPerDevice === undefined || loadSharing === undefined) return {};
  const primaryLoad = loadPerDevice / loadSharing;
  const found = { primaryLoad, loadTurnsRatio: Math.sqrt(50 / primaryLoad) };
  if (swingLimit === undefined || fullPower === undefined || deviceCount === undefined) return found;
  const square = (2 * 50 * fullPower * loadSharing) / deviceCount;
  return { ...found, fullSwingRatio: Math.sqrt(square) / swingLimit };
}

/** Current of one device over a cycle, at PEP and 6 dB down. */
function pictureEntries(stage: LinearStage, swing: number): Entries {
  const quiescent = stage.quiescentPerDevice;
  const drive = driveForFundamental(quiescent, swing / stage.loadPerDevice);
  const less = driveForFundamental(quiescent, (backOffAmplitude * swing) / stage.loadPerDevice);
  return {
    quiescentPerDevice: quiescent,
    driveCurrentPep: drive,
    peakCurrentPep: quiescent + drive,
    conductionAnglePep: 2 * halfConductionAngle(quiescent, drive),
    backOffAmplitude,
    driveCurrentBackOff: less,
    peakCurrentBackOff: Math.max(0, quiescent + less),
    conductionAngleBackOff: 2 * halfConductionAngle(quiescent, less),
  };
}
