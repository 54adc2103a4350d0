import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../shared/design/schema.ts';
import { designedConverter } from '../../../src/engine/couple/designedConverter.ts';
import { prepareFeed } from '../../../src/engine/couple/feed.ts';
import { prepare } from '../../../src/engine/couple/prepare.ts';
import { solve } from '../../../src/engine/index.ts';
import { phasedPoint } from '../../../src/engine/supply/boostPhases.ts';
import { converterLossAt } from '../../../src/engine/supply/converterLoss.ts';
import type { SupplyPath } from '../../../src/engine/supply/sourceOperatingPoint.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { change, exampleOf } from './designs.ts';

type Parts = Design['converter']['parts'];

const station = exampleOf('field-station-60w');

function designed(parts: Partial<Parts> = {}, converter: Partial<Design['converter']> = {}): Design {
  return change(station, {
    converter: {
      kind: 'designed',
      heatTo: 'ownSink',
      ...converter,
      parts: { ...station.converter.parts, ...parts },
    },
  });
}

const keysOf = (design: Design) => solve(design).supply.map((finding) => finding.key);
const values = (design: Design) => solve(design).values;
const path: SupplyPath = {
  openVoltage: 12.8,
  internalResistance: 0.02,
  pathResistance: 0.02295,
  seriesDrop: 0,
};

describe('from the battery to the rail', () => {
  // 12.8 V, 42.95 mΩ in all, 32 V at 5.5 A through given parts (independent implementation).
  it('settles at 12.148 V and 15.19 A', () => {
    const reference = designed(
      {
        inductance: 10e-6,
        inductorResistance: 0.006,
        alternatingFactor: 10,
        switchResistance: 0.005,
        hotFactor: 1,
        switchCapacitance: 0,
        gateCharge: 0,
        outputCapacitorResistance: 0.015,
        fixedPower: 0.34,
      },
      {
        outputVoltage: 32,
        frequency: 150e3,
        outputCapacitance: 330e-6,
        inputCapacitorResistance: 0.003,
      },
    );
    const found = resultOf(
      designedConverter({ ...reference, boards: { transmitPower: 0, receivePower: 0 } }, path, 5.5),
    );
    expectClose(found.inputVoltage, 12.148, 2e-4);
    expectClose(found.pep.inputCurrent, 15.19, 1e-3);
    expectClose(found.pep.efficiency, 0.9537, 5e-4);
    expectClose(found.pep.phase.switchDuty, 0.6341, 5e-4);
    expectClose(found.pep.phase.inductorPeak, 17.56, 1e-3);
  });
});

describe('the fitted loss curve', () => {
  const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  it('misses the loss budget by less than 0.5 % of the power, for any usual converter', () => {
    fc.assert(
      fc.property(
        double(22, 60),
        double(0.3, 6),
        fc.constantFrom(1, 2, 3, 4),
        fc.constantFrom('diode' as const, 'synchronous' as const),
        double(60e3, 400e3),
        double(0.01, 0.06),
        (outputVoltage, current, phases, rectifier, frequency, resistance) => {
          const design = designed({ phases, rectifier }, { outputVoltage, frequency });
          const found = designedConverter(design, { ...path, pathResistance: resistance }, current);
          return !found.ok || found.value.fitError < 0.003;
        },
      ),
      { numRuns: 300 },
    );
  });

  it('says so where it misses by more: a core much too small for its choke', () => {
    const found = designedConverter(designed({ core: 'N87', phases: 4 }, { outputVoltage: 22 }), path, 0.3);
    expect(resultOf(found).fitError).toBeGreaterThan(0.005);
    expect(resultOf(found).module.notes.map((one) => one.key)).toEqual(['converterFit']);
    const fitting = designedConverter(designed({ core: 'N87' }), path, 3.4);
    expect(resultOf(fitting).fitError).toBeLessThan(0.005);
  });

  it('says truly how far it misses: the loss at every load against the budget there', () => {
    const found = resultOf(designedConverter(designed(), path, 3.4));
    const line = path.internalResistance + path.pathResistance;
    const power = found.inputVoltage * found.pep.inputCurrent;
    for (const share of [0.03, 0.15, 0.35, 0.65, 0.95]) {
      let voltage = 12.8;
      let exact = resultOf(phasedPoint(found.parts, voltage, 36, share * 3.4));
      for (let round = 0; round < 60; round++) {
        voltage = 12.8 - line * (exact.inputCurrent + station.boards.transmitPower / voltage);
        exact = resultOf(phasedPoint(found.parts, voltage, 36, share * 3.4));
      }
      const fitted = converterLossAt(found.module.loss, exact.inputCurrent);
      expect(Math.abs(fitted - exact.total) / power).toBeLessThan(1.2 * found.fitError + 2e-4);
      expect(Math.abs(fitted - exact.total) / power).toBeLessThan(0.005);
    }
  });

  it('is exact at PEP: the losses by part add up to the loss of the coupled solve', () => {
    for (const phases of [1, 2, 4]) {
      const found = values(designed({ phases, core: 'N87' }));
      const sum = Object.entries(found)
        .filter(([key]) => /^loss[A-Z]/.test(key))
        .reduce((total, [, watts]) => total + watts, 0);
      expectClose(sum, found.converterLossPep ?? 0, 1e-6);
      expectClose(found.railVoltagePep ?? 0, 36, 1e-9);
    }
  });
});

describe('a converter from parts in the whole design', () => {
  it('sends the heat of switches and rectifiers to its own sink, the rest into the case', () => {
    const onPlate = solve(designed({}, { heatTo: 'amplifierSink' })).values;
    const apart = solve(designed({}, { heatTo: 'ownSink' })).values;
    const loss = onPlate['keyDown.converterLossOver'] ?? 0;
    const share = station.service.transmitShare;
    const silicon =
      (onPlate.lossSwitch ?? 0) +
      (onPlate.lossOverlap ?? 0) +
      (onPlate.lossCapacitance ?? 0) +
      (onPlate.lossRectifier ?? 0);
    const receive = prepare(designed({}, { heatTo: 'amplifierSink' }));
    const rest = resultOf(receive.coupled).receive.converterHeat;
    const part = silicon / (onPlate.converterLossPep ?? 1);
    expectClose(
      onPlate['keyDown.converterHeatToSink'] ?? 0,
      part * (share * loss + (1 - share) * rest),
      1e-9,
    );
    expect(apart['keyDown.converterHeatToSink']).toBe(0);
    // On its own sink the case keeps coils, capacitors and control.
    expect(apart['keyDown.caseHeat']).toBeLessThan(
      solve(designed({}, { heatTo: 'caseAir' })).values['keyDown.caseHeat'] ?? 0,
    );
  });

  it('junctions: sink under the mean, joint under the peak', () => {
    const found = values(designed({ ownSink: 6, switchToSink: 2 }));
    const silicon =
      (found.lossSwitch ?? 0) +
      (found.lossOverlap ?? 0) +
      (found.lossCapacitance ?? 0) +
      (found.lossRectifier ?? 0);
    const onSwitch = silicon - (found.lossRectifier ?? 0);
    const ambient = station.surroundings.ambient;
    expectClose(found['keyDown.switchJunction'] ?? 0, ambient + 6 * silicon + 2 * onSwitch, 1e-6);
    expect(found['ssb.switchJunction']).toBeLessThan(found['keyDown.switchJunction'] ?? 0);
  });

  it('more phases: less ripple at the input, the same power', () => {
    const one = values(designed({ phases: 1 }));
    const three = values(designed({ phases: 3 }));
    expect(three.inputRipple).toBeLessThan(0.7 * (one.inputRipple ?? 0));
    expect(three.outputCapacitorRms).toBeLessThan(one.outputCapacitorRms ?? 0);
    expectClose(three.dcPowerPep ?? 0, one.dcPowerPep ?? 0, 1e-9);
  });

  it('what the builder enters replaces the suggestion', () => {
    const found = values(
      designed({ inductance: 4.7e-6 }, { outputCapacitance: 1e-3, inputCapacitance: 1e-3 }),
    );
    expect(found.inductance).toBe(4.7e-6);
    expect(found.outputCapacitance).toBe(1e-3);
    expect(found.inputCapacitance).toBe(1e-3);
    expect(values(designed()).inductance).toBe(15e-6);
  });

  it('suggested parts leave no complaint', () => {
    for (const phases of [1, 2, 3, 4]) {
      for (const rectifier of ['diode', 'synchronous'] as const) {
        expect(keysOf(designed({ phases, rectifier })), `${phases} ${rectifier}`).toEqual([]);
      }
    }
  });
});

describe('bad input is named', () => {
  it.each([
    ['dutyBeyondController', designed({ greatestDuty: 0.6 })],
    ['currentLimitCutsPeaks', designed({ currentLimit: 6 })],
    ['inductorSaturates', designed({ saturationCurrent: 8 })],
    ['inductorSaturatesAtLimit', designed({ saturationCurrent: 16, currentLimit: 18 })],
    ['inductorNearSaturation', designed({ saturationCurrent: 13, currentLimit: 12.5 })],
    ['converterSwitchJunction', designed({ ownSink: 40 })],
    ['railFuseVoltage', designed({}, { railFuse: 'bladeMedium' })],
    [
      'railBelowHighestInput',
      change(designed({}, { outputVoltage: 14 }), { source: { chargingVoltage: 15 } }),
    ],
    ['lowestInputNotReached', designed({ inductorResistance: 0.2 }, { minimumInput: 8 })],
    ['inputFilterUnstable', designed({}, { inputCapacitance: 1e-6, filterInductance: 10e-6 })],
  ])('%s', (key, design) => {
    expect(keysOf(design)).toContain(key);
    const { supply, verdicts } = solve(design);
    expect(verdicts.find((verdict) => verdict.key === 'supply')?.sentence).toContain(
      supply.find((finding) => finding.key === key)?.sentence,
    );
  });

  it.each([
    ['ratioNotReachable', designed({ inductorResistance: 1 })],
    ['railBelowInput', designed({}, { outputVoltage: 12 })],
    ['collapse', change(designed(), { source: { internalResistance: 0.5 } })],
    ['inputTooLow', designed({}, { minimumInput: 13 })],
  ])('%s leaves no figures', (key, design) => {
    const { reasons, verdicts } = solve(design);
    expect(reasons.map((reason) => reason.key)).toContain(key);
    expect(verdicts.find((verdict) => verdict.key === 'supply')?.state).toBe('over');
  });

  it('what forbids transmitting makes the duty nothing', () => {
    const { ssb } = solve(designed({ saturationCurrent: 8 })).services;
    expect(ssb.ok && ssb.value.safeDuty).toBe(0);
    expect(ssb.ok && ssb.value.governing.key).toBe('inductorSaturates');
  });
});

it('a converter that cannot be fails every point of the supply with its reason', () => {
  const prepared = prepare(station);
  const { loads } = resultOf(prepared.electrics);
  const feed = prepareFeed(
    designed({}, { outputVoltage: 12 }),
    { resistance: 0.02, seriesDrop: 0 },
    loads.final,
    400,
  );
  expect(feed.failed?.key).toBe('railBelowInput');
});
