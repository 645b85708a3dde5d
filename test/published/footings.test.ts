import { FOOT, POUND_FORCE, POUND_PER_SQUARE_FOOT } from '../../src/foundation/index.ts';
import { embedmentFree, embedmentLength, overturningRatio, pierFooting } from '../../src/structure/index.ts';
import { list, publishedExamples } from './example-reader.ts';

const PSF_PER_FOOT = POUND_PER_SQUARE_FOOT / FOOT;

const post = (inputs: Readonly<Record<string, unknown>>, constrained: boolean) => {
  const shear = (inputs['P_lb'] as number) * POUND_FORCE;
  const height = (inputs['h_ft'] as number) * FOOT;
  return pierFooting(
    {
      diameter: (inputs['b_ft'] as number) * FOOT,
      depth: 4 * FOOT,
      lateral: (inputs['S_psf_per_ft'] as number) * PSF_PER_FOOT,
      constrained,
    },
    { shear, moment: shear * height },
  );
};

publishedExamples('footings', {
  'post-free-at-the-ground': (inputs) => {
    const { required, turns } = post(inputs, false);
    return { d_ft: required / FOOT, S1_psf: (turns.at(-1)?.pressure ?? 0) / POUND_PER_SQUARE_FOOT };
  },
  'post-held-at-the-ground': (inputs) => ({ d_ft: post(inputs, true).required / FOOT }),
  'round-footing-3-ft': ({ P_lb, h_ft, b_ft, S1_psf }) => {
    const A = embedmentLength.of(
      (P_lb as number) * POUND_FORCE,
      (S1_psf as number) * POUND_PER_SQUARE_FOOT,
      (b_ft as number) * FOOT,
    );
    return { A_ft: A / FOOT, d_req_ft: embedmentFree.of(A, (h_ft as number) * FOOT) / FOOT };
  },
  'round-footing-3-ft-from-pressure': (inputs) => {
    const shear =
      (inputs['pressure_psf'] as number) * POUND_PER_SQUARE_FOOT * (inputs['area_ft2'] as number) * FOOT ** 2;
    const height = (inputs['height_of_area_ft'] as number) * FOOT;
    const check = pierFooting(
      {
        diameter: (inputs['b_ft'] as number) * FOOT,
        depth: (inputs['depth_ft'] as number) * FOOT,
        lateral: (inputs['lateral_bearing_psf_ft'] as number) * PSF_PER_FOOT,
        constrained: false,
        isolatedPole: inputs['doubled_for_isolated_pole'] as boolean,
      },
      { shear, moment: shear * height },
    );
    return {
      P_kip: shear / POUND_FORCE / 1000,
      h_ft: (check.height ?? 0) / FOOT,
      S1_psf: check.pressure / POUND_PER_SQUARE_FOOT,
      // The document takes the pressure at the depth as built: what the first turn asks for.
      d_required_ft: (check.turns[0]?.asked ?? 0) / FOOT,
    };
  },
  'overturning-factor': ({ weights_kip_ft, arms_ft, H_ft, gamma_pcf, Ka, backfill_slope_deg }) => {
    const holding = list(weights_kip_ft).reduce(
      (sum, weight, index) => sum + weight * (list(arms_ft)[index] as number),
      0,
    );
    const push = ((gamma_pcf as number) / 1000 / 2) * (H_ft as number) ** 2 * (Ka as number);
    const moment = (push * Math.cos(((backfill_slope_deg as number) * Math.PI) / 180) * (H_ft as number)) / 3;
    return { FS_overturning: 1 / overturningRatio.of(1, moment, holding) };
  },
});
