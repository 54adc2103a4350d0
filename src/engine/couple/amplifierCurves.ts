import type { Design } from '../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import type {
  AmplifierCurves,
  DeratingCurve,
  MismatchCurve,
  OutputCurve,
  WorkingPoint,
} from '../../../shared/solution.ts';
import { services } from '../../../shared/solution.ts';
import { allowedDissipation } from '../amplifier/derating.ts';
import { foldbackShare, mismatchedPoint, swrAtDrains } from '../amplifier/mismatch.ts';
import { junctionToCaseOf } from './deviceStages.ts';
import { isLinearClass } from './final.ts';
import { type Prepared, prepare } from './prepare.ts';
import { cycleAt } from './serviceCycle.ts';
import { type Loads, transmitPoint } from './serviceLoad.ts';
import { serviceWords } from './serviceWords.ts';

const amplitudeSteps = 50;

/** Supply power, output, heat and efficiency of a final against the amplitude of its output. */
function outputCurve(prepared: Prepared): Outcome<OutputCurve> {
  const { electrics, limits, coupled, design } = prepared;
  if (!electrics.ok) return electrics;
  if (!electrics.value.loads.final.followsEnvelope) {
    return failure(
      'notLinear',
      `Class ${design.amplifier.class} has full output or none; there is no curve over its amplitude.`,
    );
  }
  const rows = [];
  for (let i = 0; i <= amplitudeSteps; i += 1) {
    const point = transmitPoint(electrics.value.loads, i / amplitudeSteps, limits.design);
    if (!point.ok) return point;
    rows.push(point.value);
  }
  const hottest = coupled.ok ? coupled.value.hottest(limits.design) : null;
  return success({
    amplitude: rows.map((_row, i) => i / amplitudeSteps),
    supplyPower: rows.map((row) => row.dcPower),
    output: rows.map((row) => row.rfPower),
    heat: rows.map((row) => row.deviceHeat),
    efficiency: rows.map((row) => (row.dcPower > 0 ? row.rfPower / row.dcPower : 0)),
    hottest,
  });
}

/** Standing-wave ratios of the mismatch curve: 1 to 10. */
const ratios = Array.from({ length: 91 }, (_, i) => 1 + i / 10);
/** Phases over which the mean is taken; even steps make it exact enough. */
const phaseSteps = 36;

/**
 * Heat of the devices at PEP against the SWR at the antenna connector: at the worst phase, the mildest and the mean of all,
 * with the foldback of the design. The rail is taken as it is at PEP into a matched load.
 */
function mismatchCurve(prepared: Prepared): Outcome<MismatchCurve> {
  const { electrics, limits, design } = prepared;
  if (!electrics.ok) return electrics;
  const { loads, pep } = electrics.value;
  if (!pep.ok) return pep;
  const { amplifier } = design;
  const linear = isLinearClass(amplifier.class);
  const rows = ratios.map((swr) => {
    const share = linear ? foldbackShare(swr, amplifier.foldbackSwr) : 1;
    return mismatchRow(loads, swr, share, limits.design, pep.value.railVoltage);
  });
  return success({
    swr: ratios,
    worst: rows.map((row) => row.worst),
    mean: rows.map((row) => row.mean),
    mildest: rows.map((row) => row.mildest),
    forward: rows.map((row) => row.forward),
  });
}

interface MismatchRow {
  readonly worst: number;
  readonly mean: number;
  readonly mildest: number;
  readonly forward: number;
}

function mismatchRow(
  { design, final }: Loads,
  swr: number,
  share: number,
  junction: number,
  rail: number,
): MismatchRow {
  // The final carries the foldback of its own SWR; what is wanted here is that of this one.
  const amplitude = Math.sqrt(share / final.load.foldback);
  const point = final.at(amplitude, rail, junction);
  const forward = point.rfPower * final.load.swr;
  const dcPower = rail * point.railCurrent;
  const drive = final.drivePower * amplitude * amplitude;
  const seen = swrAtDrains(swr, design.amplifier.outputLoss);
  if (!(forward > 0 && dcPower > 0)) return { worst: dcPower, mean: dcPower, mildest: dcPower, forward };
  const efficiency = forward / dcPower;
  let sum = 0;
  let mildest = Number.POSITIVE_INFINITY;
  for (let step = 0; step < phaseSteps; step += 1) {
    const { heat } = mismatchedPoint(seen, (2 * Math.PI * step) / phaseSteps, efficiency);
    sum += heat;
    mildest = Math.min(mildest, heat);
  }
  return {
    worst: dcPower - forward / seen + drive,
    mean: (forward * sum) / phaseSteps + drive,
    mildest: forward * mildest + drive,
    forward: forward * 10 ** (-design.amplifier.outputLoss / 10),
  };
}

const deratingSteps = 40;
/** Where data sheets begin to derate, K. */
const sheetCase = 298.15;

/** The derating line of one device with the working point of each service on it. */
function deratingCurve(prepared: Prepared): Outcome<DeratingCurve> {
  const { design, limits, coupled } = prepared;
  const { device } = design;
  if (!coupled.ok) return coupled;
  const rating = {
    maximumPower: device.maximumHeat ?? Number.POSITIVE_INFINITY,
    maximumJunction: device.maximumJunction,
    junctionToCase: junctionToCaseOf(device),
  };
  const caseTemperature = Array.from(
    { length: deratingSteps + 1 },
    (_, i) => sheetCase + ((limits.maximum - sheetCase) * i) / deratingSteps,
  );
  const words = serviceWords(design);
  const points = services.flatMap((service): WorkingPoint[] => {
    const state = cycleAt(coupled.value, service, design.service.transmitShare);
    if (!state.ok) return [];
    const node = state.value.nodes.find((one) => one.key === 'case');
    const heat = state.value.load.over.deviceHeat / device.count;
    return node ? [{ service, name: words[service].name, caseTemperature: node.peak, heat }] : [];
  });
  return success({
    caseTemperature,
    allowed: caseTemperature.map((kelvin) => allowedDissipation(rating, kelvin)),
    designed: caseTemperature.map((kelvin) =>
      allowedDissipation({ ...rating, maximumJunction: limits.design }, kelvin),
    ),
    points,
  });
}

/** The curves of the final: over its amplitude, over SWR, and its derating line. */
export function amplifierCurves(design: Design): AmplifierCurves {
  const prepared = prepare(design);
  return {
    output: outputCurve(prepared),
    mismatch: mismatchCurve(prepared),
    derating: deratingCurve(prepared),
  };
}
