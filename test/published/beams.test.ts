import { INCH, POUND, POUND_FORCE, POUND_PER_SQUARE_FOOT } from '../../src/foundation/index.ts';
import {
  type BeamForce,
  bendingAtYield,
  mastBending,
  STANDARD_PIPES,
  sectionModulusOfTube,
  type Tube,
  tubeSection,
} from '../../src/structure/index.ts';
import { type Computation, LeftOut, publishedExamples } from './example-reader.ts';

const PSI = POUND_PER_SQUARE_FOOT * 144;

const pipe: Computation = ({ NPS, OD_in, wall_in }) => {
  const listed = STANDARD_PIPES.find(
    ({ nominal, outside, wall }) =>
      nominal === NPS &&
      Math.abs(outside / INCH - (OD_in as number)) < 1e-9 &&
      Math.abs(wall / INCH - (wall_in as number)) < 1e-9,
  );
  if (!listed) throw new Error('the program does not list this pipe');
  const { outside, wall } = listed;
  const found = tubeSection({ outside, wall, material: 'steel' });
  return {
    A_in2: found.area / INCH ** 2,
    I_in4: found.secondMoment / INCH ** 4,
    S_in3: found.sectionModulus / INCH ** 3,
    r_in: found.radiusOfGyration / INCH,
    Z_plastic_in3: new LeftOut('bending is held to the elastic modulus on purpose'),
    weight_lb_ft: (found.weightPerLength * 12 * INCH) / POUND,
  };
};

/** A tube whose E·I is asked for, whatever its size. */
const ofRigidity = (rigidity: number): Tube => {
  const tube = { outside: 0.1, wall: 0.01, material: 'steel' } as const;
  return { ...tube, youngsModulus: rigidity / tubeSection(tube).secondMoment };
};

const bent = (rigidity: number, length: number, acting: readonly BeamForce[], bearing?: number) =>
  mastBending(
    { pieces: [{ ...ofRigidity(rigidity), low: 0, high: length }], foot: 0, ...(bearing ? { bearing } : {}) },
    acting,
  );

/** The load in the middle of a span that brings the outermost metal of a pipe to a stress. */
const middleLoad: Computation = ({ D_mm, t_mm, span_mm, sigma_N_mm2 }) => {
  const S = sectionModulusOfTube.of((D_mm as number) / 1000, (t_mm as number) / 1000);
  const span = (span_mm as number) / 1000;
  // The moment that one newton in the middle makes, by the beam held at both its ends.
  const found = bent(1, span, [{ low: span / 2, high: span / 2, force: 1 }], span);
  const one = found.stations.find(({ z }) => z === span / 2)?.moment ?? Number.NaN;
  return { P_kN: bendingAtYield.of((sigma_N_mm2 as number) * 1e6, S) / Math.abs(one) / 1000 };
};

publishedExamples(
  'beams',
  {
    'schedule-40-pipe-1-1-2-in': pipe,
    'schedule-40-pipe-2-in': pipe,
    'schedule-40-pipe-2-1-2-in': pipe,
    'schedule-40-pipe-4-in': pipe,
    'schedule-80-pipe-1-1-2-in': pipe,
    'schedule-80-pipe-2-in': pipe,
    'schedule-80-pipe-2-1-2-in': pipe,
    'schedule-80-pipe-3-in': pipe,
    'schedule-80-pipe-4-in': pipe,
    'post-sized-for-bending': ({ P_N, h_m, allowable_timber_Pa, allowable_tube_Pa }) => {
      const { clampMoment } = bent(1, h_m as number, [
        { low: h_m as number, high: h_m as number, force: P_N as number },
      ]);
      // S goes with the cube of the size: of a size of one metre it is S_1, with a wall of half of it or an eighth.
      const size = (allowable: number, wall: number) =>
        Math.cbrt(clampMoment / allowable / sectionModulusOfTube.of(1, wall));
      return {
        timber_diameter_m: size(allowable_timber_Pa as number, 1 / 2),
        tube_outside_diameter_m: size(allowable_tube_Pa as number, 1 / 8),
      };
    },
    'pipe-beam-70-mm': middleLoad,
    'pipe-beam-60-mm': middleLoad,
    'cantilever-with-end-load': ({ P_N, L_mm, E_N_mm2, I_mm4 }) => {
      const length = (L_mm as number) / 1000;
      const rigidity = (E_N_mm2 as number) * 1e6 * (I_mm4 as number) * 1e-12;
      const { tip } = bent(rigidity, length, [{ low: length, high: length, force: P_N as number }]);
      return { slope_rad: tip.slope, deflection_mm: tip.movement * 1000 };
    },
    'overhanging-beam': ({ w_kN_m, span_m, overhang_m, P_kN }) => {
      const [span, overhang] = [span_m as number, overhang_m as number];
      const end = span + overhang;
      const acting = [
        { low: 0, high: span, force: (w_kN_m as number) * span },
        { low: end, high: end, force: P_kN as number },
      ];
      return { EI_deflection_kNm3: bent(1, end, acting, span).tip.movement };
    },
    // The load that falls to nothing as two thousand even strips; what that leaves is under a part in a million.
    'cantilever-with-triangular-load': ({ w_kN_m, loaded_m, tail_m }) => {
      const loaded = loaded_m as number;
      const strips = 2000;
      const acting = Array.from({ length: strips }, (_, index) => ({
        low: (index * loaded) / strips,
        high: ((index + 1) * loaded) / strips,
        force: (w_kN_m as number) * (1 - (index + 0.5) / strips) * (loaded / strips),
      }));
      return { EI_deflection_kNm3: bent(1, loaded + (tail_m as number), acting).tip.movement };
    },
    'cantilever-tube-by-finite-elements': ({ OD_in, wall_in, L_in, P_lb, E_psi }) => {
      const tube = { outside: (OD_in as number) * INCH, wall: (wall_in as number) * INCH, material: 'steel' } as const;
      const length = (L_in as number) * INCH;
      const { tip } = mastBending(
        { pieces: [{ ...tube, youngsModulus: (E_psi as number) * PSI, low: 0, high: length }], foot: 0 },
        [{ low: length, high: length, force: (P_lb as number) * POUND_FORCE }],
      );
      const inches = tip.movement / INCH;
      return { closed_form_in: inches, beam_elements_in: inches, pipe_elements_in: inches };
    },
  },
  { 'buckling-of-an-aluminium-pipe': 'no buckling is computed' },
);
