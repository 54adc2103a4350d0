import type { SourceInput } from '../../../shared/design/schema.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import type { Caution } from '../../../shared/solution.ts';
import type { ExposureDistance } from './exposureDistance.ts';
import type { TouchedBy, TouchMaterial } from './touch.ts';

/** The figures a design comes to, as far as people are concerned. `null` where there is none. */
export interface CautionFigures {
  readonly source: SourceInput['kind'];
  /** V */
  readonly openVoltage: number;
  /** Short across the source behind the fuse place, A. */
  readonly faultCurrent: number | null;
  /** Breaking capacity of the fuse, A. */
  readonly breakingCapacity: number | null;
  /** From the source terminal along the wire, m. */
  readonly fuseDistance: number;
  /** A; null when no rating was found. */
  readonly fuseRating: number | null;
  /** "blade, medium" */
  readonly fuseName: string;
  /** A series diode or the like keeps reversed leads from harming. */
  readonly reverseProtected: boolean;
  /** Of the supply wire, K. */
  readonly wireTemperature: number | null;
  /** Limit of its insulation, K. */
  readonly insulationLimit: number;
  /** From the source at the peak of the envelope, A. */
  readonly inputCurrent: number | null;
  /** Hottest touchable place at the pessimistic edge, K. */
  readonly touchTemperature: number | null;
  readonly touchedBy: TouchedBy;
  readonly surface: TouchMaterial;
  /** Time until the sink is below 48 °C after switching off, s. */
  readonly coolingTime: number | null;
  /** Highest junction temperature within the cycle, and the greatest of the data sheet, K. */
  readonly junctionPeak: number | null;
  /** The same at the pessimistic edge of its band, K; null while there is no band. */
  readonly junctionEdge: number | null;
  /** Name of the service in which it is that hot: "key-down". */
  readonly hottestService: string;
  readonly maximumJunction: number;
  /** Forward peak envelope power at the antenna connector, W. */
  readonly pep: number;
  /** Standing-wave ratio the output is judged at. */
  readonly swr: number;
  /** Level of current through a touching finger on this band, A r.m.s. */
  readonly fingerLevel: number | null;
  readonly exposure: Outcome<ExposureDistance>;
  /** Nearest that people come to the antenna, m. */
  readonly nearestPerson: number | null;
  /** US exemption at that distance, in words; null under other limit sets. */
  readonly exemption: string | null;
  /** Rail at the devices, the higher of at rest and at the peak, V. */
  readonly railVoltage: number;
  readonly fromConverter: boolean;
  /** Most the converter can give when it fails high, V. */
  readonly greatestRail: number | null;
  /** Capacitance on the rail, F; 0 when not known. */
  readonly railCapacitance: number;
  /** In which the rail is to fall to 5 % after switching off, s. */
  readonly bleederTime: number;
  readonly package: string;
  readonly pad: string;
  readonly deviceCount: number;
  /** Fins or pins that can cut. */
  readonly finned: boolean;
  /** kg */
  readonly sinkMass: number | null;
  readonly fan: boolean;
}

/** One caution, or nothing where the figures give no cause. */
export type CautionBuilder = (figures: CautionFigures) => Caution | null;
