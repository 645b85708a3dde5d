import type { WindStructure } from '../methods/index.ts';
import type { SectionShape, Station, Tower } from './station.ts';

/**
 * The tower as the factors of the whole structure see it: direction and gust. A tower with any lattice section counts as
 * a lattice; one whose shape is not known is asked for twice, once as each kind.
 *
 * @param assumed the kind to take where no section has a shape
 * @example windStructureOf({ units: 'si', loads: [], cables: [], tower: { support: 'free', foot: 0, top: 12, sections: [], sectionsGiven: false, telescopes: false, held: [], heldGiven: false, asDrawn: false, used: true } }, 'pole').kind // 'pole'
 */
export function windStructureOf(station: Station, assumed: 'lattice' | 'pole'): WindStructure {
  const { tower } = station;
  const shapes = shapesOf(tower);
  const pole = shapes.find((shape) => shape.kind === 'pole');
  const kind = shapes.length === 0 ? assumed : shapes.some((shape) => shape.kind === 'lattice') ? 'lattice' : 'pole';
  const widths = shapes.map((shape) => (shape.width[0] + shape.width[1]) / 2);
  const width = widths.length > 0 ? widths.reduce((sum, each) => sum + each, 0) / widths.length : 0.3;
  return {
    kind,
    sides: pole?.sides ?? 0,
    guyed: tower.support === 'guyed',
    height: tower.top,
    width,
    ...(tower.frequency === undefined ? {} : { frequency: tower.frequency }),
    ...(tower.damping === undefined ? {} : { damping: tower.damping }),
  };
}

function shapesOf(tower: Tower): readonly SectionShape[] {
  return tower.sections.flatMap((section) => (section.shape ? [section.shape] : []));
}

/**
 * Whether the tower's own wind can be worked out: every section has a shape.
 *
 * @example bareTowerWindKnown({ support: 'free', foot: 0, top: 12, sections: [], sectionsGiven: false, telescopes: false, held: [], heldGiven: false, asDrawn: false, used: true }) // false
 */
export function bareTowerWindKnown(tower: Tower): boolean {
  return tower.sections.length > 0 && tower.sections.every((section) => section.shape !== undefined);
}
