import type { RiskCategory } from './site.ts';

/** Importance factor of TIA-222-G by class; its classes end at III, category IV is read as III. @source tia222-g */
export const IMPORTANCE_G: Readonly<Record<RiskCategory, number>> = { I: 0.87, II: 1, III: 1.15, IV: 1.15 };
