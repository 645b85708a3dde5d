import { FOOT, GRAVITY, POUND, POUND_FORCE } from '../../src/foundation/index.ts';
import { type RaisingGear, raisingAt, type TiltingBody } from '../../src/structure/index.ts';
import { LeftOut, list, publishedExamples } from './example-reader.ts';

const DEGREE = Math.PI / 180;
const lump = (mass: number, along: number): TiltingBody => ({ mass, low: along, high: along, offset: 0 });

publishedExamples('raising', {
  'boom-held-by-a-cable': ({
    boom_m: boom,
    self_weight_kN: own,
    cg_m: middle,
    tip_load_kN: tip,
    boom_angle_deg: angle,
    cable_to_boom_deg: cable,
  }) => {
    const tilt = (angle as number) * DEGREE;
    const slope = ((angle as number) - (cable as number)) * DEGREE;
    const [x, y] = [(boom as number) * Math.cos(tilt), (boom as number) * Math.sin(tilt)];
    const gear: RaisingGear = { kind: 'line', anchor: [0, y - x * Math.tan(slope)], attach: [boom as number, 0] };
    const kilonewton = 1000 / GRAVITY;
    const bodies = [
      lump((own as number) * kilonewton, middle as number),
      lump((tip as number) * kilonewton, boom as number),
    ];
    return { T_kN: (raisingAt(bodies, gear, tilt).force as number) / 1000 };
  },

  'anchored-rope-about-a-hinge': ({
    boom_ft: boom,
    boom_angle_deg: angle,
    rope_angle_deg: rope,
    rope_tension_lb: tension,
  }) => {
    const tilt = (angle as number) * DEGREE;
    const [x, y] = [(boom as number) * Math.cos(tilt) * FOOT, (boom as number) * Math.sin(tilt) * FOOT];
    const gear: RaisingGear = {
      kind: 'line',
      anchor: [x - y / Math.tan((rope as number) * DEGREE), 0],
      attach: [(boom as number) * FOOT, 0],
    };
    const { arm } = raisingAt([lump(1, 1)], gear, tilt);
    return {
      anchor_distance_ft: new LeftOut('where the anchor stands is given by the plan'),
      moment_ft_lb: ((tension as number) * arm) / FOOT,
    };
  },

  'mast-raised-by-a-line-over-a-post': ({
    W_lb: weight,
    xcg_ft: middle,
    attach_ft: attach,
    post_height_ft: post,
    angle_deg: angles,
  }) => {
    const gear: RaisingGear = {
      kind: 'line',
      anchor: [0, (post as number) * FOOT],
      attach: [(attach as number) * FOOT, 0],
    };
    const bodies = [lump((weight as number) * POUND, (middle as number) * FOOT)];
    const rows = list(angles).map((angle) => raisingAt(bodies, gear, angle * DEGREE));
    return {
      moment_lbf_ft: rows.map(({ moment }) => moment / POUND_FORCE / FOOT),
      arm_ft: rows.map(({ arm }) => arm / FOOT),
      pull_lbf: rows.map(({ force }) => (force as number) / POUND_FORCE),
    };
  },
});
