/** Sides and vapours against what can be computed or looked up elsewhere. */
import { describe, expect, it } from "vitest";
import { type Antoine, twoSides, vapourFacts } from "./index.ts";

const pressure = ({ a, b, c }: Pick<Antoine, "a" | "b" | "c">, kelvin: number) => Math.exp(a - b / (kelvin + c));

describe("two tubes", () => {
  it.each(twoSides.rows)("[KN13] at $infestedShare infested", (row) => {
    const tube = 1 - Math.sqrt(1 - row.infestedShare);
    const half = 5e-5; // half a unit of the last printed digit
    expect(Math.abs(tube - row.tube)).toBeLessThanOrEqual(half);
    expect(Math.abs(tube ** 2 / row.infestedShare - row.bothAmongInfested)).toBeLessThanOrEqual(half);
    expect(Math.abs(tube / row.infestedShare - row.foundByOneSide)).toBeLessThanOrEqual(10 * half);
  });
});

describe("vapours", () => {
  const { menthol, thymol, formicAcid } = vapourFacts;

  // The fit and the handbook are two sources: thymol's differ by 1.91 K, the others by less than 1 K.
  it.each([
    { name: "menthol", vapour: menthol, kelvinApart: 1.5 },
    { name: "thymol", vapour: thymol, kelvinApart: 2 },
    { name: "formic acid", vapour: formicAcid, kelvinApart: 1.5 },
  ])("[KN14] $name boils at the handbook's temperature, within $kelvinApart K", ({ vapour, kelvinApart }) => {
    const boils = vapour.liquid.b / (vapour.liquid.a - Math.log(101325)) - vapour.liquid.c;
    expect(Math.abs(boils - vapour.boilingKelvin.value)).toBeLessThanOrEqual(kelvinApart);
  });

  it("[KN14] give the check values at 25 °C: thymol 2.22 Pa, formic acid 5.67 kPa by one fit, 5.69 by the other", () => {
    expect(pressure(thymol.solid, 298.15)).toBeCloseTo(2.22, 2);
    expect(pressure(formicAcid.liquid, 298.15) / 1000).toBeCloseTo(5.67, 2);
    const { c1, c2, c3, c4 } = formicAcid.perry;
    const perry = Math.exp(c1 + c2 / 298.15 + c3 * Math.log(298.15) + c4 * 298.15 ** 2);
    expect(perry / 1000).toBeCloseTo(5.69, 2);
  });

  it("[KN14] of formic acid agree within 1 % where solid and liquid meet", () => {
    const kelvin = formicAcid.meltingKelvin.value;
    const ratio = pressure(formicAcid.solid, kelvin) / pressure(formicAcid.liquid, kelvin);
    expect(Math.abs(ratio - 1)).toBeLessThanOrEqual(0.01);
  });

  it("[KN14] the liquid fit of menthol begins above hive warmth and would give double there", () => {
    expect(menthol.liquid.fromKelvin).toBeGreaterThan(273.15 + 40);
    expect(pressure(menthol.liquid, 298.15)).toBeCloseTo(9.97, 1);
    expect(pressure(menthol.liquid, 298.15) / menthol.liquidAt298Middle.value).toBeGreaterThan(2);
    expect(menthol.solid).toBeNull();
  });
});
