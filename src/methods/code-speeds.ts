import { evaluate, type Trace } from '../foundation/index.ts';
import { basicWindFor, convertSpeed, gustAtAntenna, type SpeedBasis } from '../wind/index.ts';
import type { LevelFactors, SpeedRule } from './method.ts';

/**
 * The speeds of a method whose kind of speed turns into others as the building codes have it, and whose return period is in
 * its maps.
 *
 * v_a = V₃ₛ·√(K_z·K_zt·K_e), of a design wind with V₃ₛ the nominal gust
 *
 * @param strengthMap factors of a strength-level speed that it takes as it is
 * @throws Refusal `speed-too-low`, later, when a gust under 10.5 mph is asked for as a fastest mile
 * @example codeSpeeds('gust3-nominal').toOwnBasis(100, 'gust3-strength', 'site') // 77.4597
 * @source ibc-2018
 */
export function codeSpeeds(basis: SpeedBasis, strengthMap?: LevelFactors): SpeedRule {
  const isGust = basis === 'gust3-strength' || basis === 'gust3-nominal';
  const entersAsItIs = (other: SpeedBasis) => strengthMap !== undefined && other === 'gust3-strength';
  const actualGust = (speed: number, trace?: Trace) =>
    // What is held to is never said as the larger of two readings.
    isGust ? speed : convertSpeed(speed, basis, 'gust3-nominal', 'rating', trace);
  return {
    basis,
    sharedBasis: basis,
    ...(strengthMap === undefined ? {} : { strengthMap }),
    speedLevel: (other) => (entersAsItIs(other) ? 'strength' : 'own'),
    toOwnBasis: (speed, from, role, trace) =>
      entersAsItIs(from) ? speed : convertSpeed(speed, from, basis, role, trace),
    fromOwnBasis: (speed, to, role, trace) => (entersAsItIs(to) ? speed : convertSpeed(speed, basis, to, role, trace)),
    actualGust,
    gustAtHeight: (wind, speed, z, trace) => {
      const { actual, speedLevel } = wind.conditions;
      const from = speedLevel === 'strength' ? 'gust3-strength' : basis;
      // A storm that has come is a gust in the open: it needs no return to a nominal one.
      const gust = actual ? actualGust(speed, trace) : convertSpeed(speed, from, 'gust3-nominal', 'site', trace);
      const factors = [wind.exposureCoefficient(z, trace), wind.topographicFactor(z, trace)] as const;
      return evaluate(trace, gustAtAntenna, [gust, ...factors, wind.elevationFactor]);
    },
    returnPeriod: { asked: false, speedFor: basicWindFor },
  };
}
