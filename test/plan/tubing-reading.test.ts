import { describe, expect, it } from 'vitest';
import { changed, faultsOf, read, type Sample } from './sample-plans.ts';

const bare = { shape: null, faces: null, width: null, members: null };
const pole = { ...bare, top: 40, shape: 'pole', width: 8 };
const sectionsOf = (tower: Sample) => read(changed({ tower })).input.station.tower.sections;
const faultAt = (tower: Sample) => faultsOf(changed({ tower })).map(({ pointer, code }) => `${pointer} ${code}`);

describe('wall and material of a section', () => {
  it('are read in the units of diameters', () => {
    for (const { tubing } of sectionsOf({ ...pole, wall: '1/4 in', material: 'steel' })) {
      expect(tubing).toEqual({ wall: expect.closeTo(0.00635, 12), material: 'steel' });
    }
    const lattice = { leg: 1.25, brace: 0.4375, panel: 18, legWall: 0.625, material: 'aluminium' };
    expect(sectionsOf(lattice)[0]?.tubing).toEqual({ wall: expect.closeTo(0.625 * 0.0254, 12), material: 'aluminium' });
    expect(sectionsOf(pole)[0]).not.toHaveProperty('tubing');
  });

  it('are refused where they say nothing', () => {
    expect(faultAt({ ...pole, wall: 0.25 })).toEqual(['#/tower/material missing']);
    expect(faultAt({ ...pole, material: 'steel' })).toEqual(['#/tower/wall missing']);
    expect(faultAt({ ...pole, legWall: 0.25, material: 'steel' })).toEqual(['#/tower/legWall shape-field-foreign']);
    expect(faultAt({ wall: 0.25, material: 'steel' })).toEqual(['#/tower/wall shape-field-foreign']);
    expect(faultAt({ legWall: 0.25, material: 'steel' })).toEqual(['#/tower/leg shape-field-missing']);
    expect(faultAt({ ...pole, wall: 4.1, material: 'steel' })).toEqual(['#/tower/wall wall-too-thick']);
    expect(faultAt({ ...pole, wall: 0.25, material: 'tin' })).toEqual(['#/tower/material not-a-choice']);
    const sections = [{ length: 48, shape: 'pole', width: 8, wall: 0.25, material: 'steel' }];
    expect(faultAt({ ...bare, sections, material: 'steel' })).toEqual(['#/tower/material goes-with']);
  });

  it('are no fields of a load', () => {
    const load = { name: 'pipe', height: [48, 50], shape: 'pole', width: 4, wall: 0.25, material: 'steel' };
    expect(faultsOf(changed({ loads: [load] })).map(({ code }) => code)).toEqual(['unknown-field', 'unknown-field']);
  });
});
