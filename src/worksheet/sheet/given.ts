import type { Answer, CautionAnswer } from '../../answer/index.ts';
import type { Assessment } from '../../margins/index.ts';
import { gathered } from '../../words/index.ts';
import { cautionDocuments } from '../answer-document.ts';
import type { Testimony } from '../witness.ts';
import type { Block } from './sheet.ts';

/** A document that formulas and tables come from, as a sheet lists it. */
export interface ListedSource {
  readonly id: string;
  readonly title: string;
  readonly short?: string;
  readonly edition: string;
  readonly seen: string;
}

/** Everything a worksheet of a check is made from. */
export interface AnswerSheetGiven {
  readonly assessment: Assessment;
  readonly document: Answer;
  readonly drawings: readonly { readonly name: string; readonly svg: string }[];
  /** Every step of the working and whether it re-evaluates. */
  readonly testimony: readonly Testimony[];
  readonly working: 'none' | 'full';
  readonly version: string;
  readonly sources: readonly ListedSource[];
}

/** What a plan says for the title block. */
export interface TitleBlock {
  readonly applicant?: string;
  readonly owner?: string;
  readonly address?: string;
  readonly parcel?: string;
  readonly jurisdiction?: string;
  readonly permit?: string;
  readonly code?: string;
  readonly date?: string;
  readonly drawings?: readonly string[];
  readonly attachments?: readonly string[];
  readonly source?: string;
  readonly note?: string;
}

/** The plan as its owner wrote it, as far as the sheet quotes it. */
interface PlanWords {
  readonly sheet?: TitleBlock;
  readonly ratings?: readonly { readonly source?: string; readonly note?: string }[];
  readonly loads?: readonly { readonly source?: string }[];
}

/** What the plan says beside its numbers; it was read before the check was made. */
export function planWords({ document }: AnswerSheetGiven): PlanWords {
  return document.plan as PlanWords;
}

/** The part of the sheet that a caution of one line stands with. */
export type CautionHome = 'design' | 'structure' | 'wind-loads' | 'checks' | 'sources';

function homeOf({ code, at = '' }: CautionAnswer): CautionHome {
  if (code === 'method-from-memory') return 'sources';
  if (/^\/(site|method)\b/.test(at)) return 'design';
  if (/^\/(tower|mast|rotator)\b/.test(at)) return 'structure';
  if (/^\/(loads|cables)\b/.test(at)) return 'wind-loads';
  return 'checks';
}

export function cautionBlock({ severity, says, action }: CautionAnswer): Block {
  return { kind: 'caution', severity, says, action };
}

/** The cautions as a sheet says them: what is the same of several things in one sentence. */
export function sheetCautions({ assessment }: AnswerSheetGiven): readonly CautionAnswer[] {
  return cautionDocuments(gathered(assessment.cautions), assessment.input.station.units);
}

/** Cautions of one line that stand with a part of the sheet. */
export function cautionsFor(home: CautionHome, given: AnswerSheetGiven): readonly Block[] {
  return sheetCautions(given)
    .filter((caution) => caution.severity === 'line' && homeOf(caution) === home)
    .map(cautionBlock);
}
