import { readFileSync } from 'node:fs';
import { assessed } from './test/margins/any-plan.ts';
import { answerText } from './src/worksheet/index.ts';
const GUYS = { by: 'guys', count: 3, diameter: 0.1875, radius: 50 };
const STEEL = {shape: 'lattice', faces: 3, width: 12, members: 'round', leg: 1.25, brace: 0.4375, panel: 16, pattern: 'zigzag', legWall: 0.083, material: 'steel'};const TOWER = { support: 'guyed', top: 70,  weight: 450, asDrawn: true, sections: Array.from({length:7},()=>({length:10,make:'a',uniform:true,...STEEL})),
  supportedAt: [{ height: 33, ...GUYS }, { height: 65, ...GUYS }] };
const plan = { units: 'us', method: 'tia222-g', site: { wind: { speed: 90, basis: 'gust3-nominal' }, exposure: 'C', riskCategory: 'II' }, tower: TOWER,
  mast: { outside: 2, wall: 0.25, length: 10, inside: 4, yield: 50, bearing: 70 }, rotator: { weight: 20 },
  loads: [{ name: 'b', above: 2, front: +(process.argv[3] ?? 6), side: 3, areaKind: 'effective', turns: true, weight: 40 }, { name: 's', height: 50, on: 'tower', offset: 0, front: +(process.argv[2] ?? 0.05), side: +(process.argv[2] ?? 0.05), areaKind: 'effective', weight: 4 }],
  cables: process.argv[4] ? [{ count: 2, diameter: 0.4, weight: 0.1 }] : [],
  ratings: [{ of: 'tower', area: 12, areaKind: 'effective', wind: { speed: 90, basis: 'gust3-nominal', method: 'tia222-g', exposure: 'C', riskCategory: 'II' }, top: 70 }] };
const t = process.cpuUsage();
const a = assessed(plan as never);
const c = process.cpuUsage(t);

console.log((c.user + c.system) / 1000, 'ms');
for (let i = 0; i < 4; i++) { const t = process.cpuUsage(); assessed(plan as never); const c = process.cpuUsage(t); console.log((c.user + c.system) / 1000, 'ms'); }
for (const { id, verdict, because, needs, result } of a.checks) if (['tower','guys','tower-below'].includes(id)) console.log(id, verdict, because, needs.join(), result?.of, result?.ratio.toFixed(4), result?.ratioRange.map(x=>x.toFixed(3)).join('-'), result?.demand.toFixed(1), result?.capacity.toFixed(1), result?.height?.toFixed(2), result?.holdsTo?.gust.toFixed(2));
