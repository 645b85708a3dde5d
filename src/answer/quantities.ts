import { z } from 'zod';
import { UNIT_LABELS } from '../foundation/index.ts';
import { SPEED_BASES } from '../wind/index.ts';
import type { Described } from './settled.ts';

export const number = (description: string) => z.number().meta({ description });
export const words = (description: string) => z.string().meta({ description });
export const pointer = (description: string) => words(`JSON pointer to ${description}`);
export const checkId = (description: string) => words(`Id of the check${description}.`);

export const unitSchema = z.enum(UNIT_LABELS).meta({ id: 'Unit', description: 'Unit; empty for a plain number.' });

export const quantitySchema = z
  .object({ value: z.number(), unit: unitSchema })
  .meta({ id: 'Quantity', description: 'A number with its unit.' });
export type Quantity = Described<typeof quantitySchema>;

export const quantityOf = (description: string) => quantitySchema.meta({ description });
export const maybe = (description: string) => z.exactOptional(quantityOf(description));

const basisSchema = z
  .enum(SPEED_BASES)
  .meta({ id: 'SpeedBasis', description: 'Type of speed: its averaging time and its level.' });

export const speedWithBasisSchema = z
  .object({ value: z.number(), unit: unitSchema, basis: basisSchema })
  .meta({ id: 'SpeedWithBasis', description: 'A speed with its type.' });

export const headingsSchema = z
  .object({
    fixed: maybe('Wind direction, for what has a heading of its own.'),
    turning: maybe('Wind direction from the zero of the rotator, for what turns with it.'),
  })
  .meta({ id: 'Headings', description: 'Worst wind directions; the opposite ones are as bad.' });
export type Headings = Described<typeof headingsSchema>;

export const forcesSchema = z
  .object({ shear: quantitySchema, moment: quantitySchema })
  .meta({ id: 'BaseForces', description: 'Shear and moment at the base of the tower.' });
