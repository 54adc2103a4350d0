import { describe, expect, it } from 'vitest';
import { standardPressure } from '../../../src/engine/heat/constants.ts';
import { levelPanelHeat, panelArea, panelHeat } from '../../../src/engine/heat/panel.ts';
import { expectClose } from '../closeTo.ts';

const conditions = { pressure: standardPressure, filmFactor: 1, channelFactor: 0.5 };

describe('flat panel', () => {
  // Incropera and DeWitt, example 9.2: 0.71 m door at 232 °C in 23 °C air, 1060 W by convection (from memory); its air
  // properties differ by 0.5 % in conductivity and 0.7 % in viscosity, its density is that of 1 bar.
  it('has the convection of the book', () => {
    const door = { width: 1.02, length: 0.71, baseThickness: 0, emissivity: 1, backExposed: false };
    const heat = panelHeat(door, 505.15, 296.15, 296.15, { ...conditions, pressure: 1e5 });
    expectClose(heat.convection, 1060, 0.02);
  });

  // Same example, radiation of a black door: σ A (505⁴ - 296⁴) = 2355 W with emissivity 1 (from memory).
  it('has the radiation of the book', () => {
    const door = { width: 1.02, length: 0.71, baseThickness: 0, emissivity: 1, backExposed: false };
    expectClose(panelHeat(door, 505, 296, 296, conditions).radiation, 2355, 2e-3);
  });

  it('gives twice the heat of a thin panel with both faces free', () => {
    const one = { width: 0.2, length: 0.3, baseThickness: 0, emissivity: 0.9, backExposed: false };
    const both = { ...one, backExposed: true };
    expectClose(panelArea(both), 2 * panelArea(one), 1e-12);
    expectClose(
      panelHeat(both, 350, 300, 300, conditions).total,
      2 * panelHeat(one, 350, 300, 300, conditions).total,
      1e-12,
    );
  });

  it('is even: a cooler panel takes up heat, none at equal temperature', () => {
    const panel = { width: 0.2, length: 0.3, baseThickness: 0.003, emissivity: 0.9, backExposed: true };
    expect(panelHeat(panel, 300, 300, 300, conditions).total).toBe(0);
    expect(panelHeat(panel, 299.999, 300, 300, conditions).total).toBeLessThan(0);
  });

  // Cengel and Ghajar, example 9-2 (from memory): a 0.6 m square at 90 °C in 30 °C air, one face, loses 115 W upright,
  // 128 W facing up and 64.2 W facing down by convection; its Nu facing up is that of the laminar piece.
  it('stands to the book upright, facing up and facing down', () => {
    const square = { width: 0.6, length: 0.6, baseThickness: 0, emissivity: 0.9, backExposed: false };
    expectClose(panelHeat(square, 363.15, 303.15, 303.15, conditions).convection, 115, 0.03);
    expectClose(levelPanelHeat(square, true, 363.15, 303.15, 303.15, conditions).convection, 128, 0.12);
    expectClose(levelPanelHeat(square, false, 363.15, 303.15, 303.15, conditions).convection, 64.2, 0.03);
  });

  it('gives up and down together from a level panel with both faces free', () => {
    const one = { width: 0.2, length: 0.3, baseThickness: 0, emissivity: 0.9, backExposed: false };
    const both = levelPanelHeat({ ...one, backExposed: true }, true, 350, 300, 300, conditions).total;
    const up = levelPanelHeat(one, true, 350, 300, 300, conditions).total;
    const down = levelPanelHeat(one, false, 350, 300, 300, conditions).total;
    expectClose(both, up + down, 1e-12);
    expect(down).toBeLessThan(up);
  });
});
