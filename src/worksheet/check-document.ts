import { type CheckAnswer, type CheckState, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import { type Assessment, type Check, type CheckResult, type Compared, enteredBasis } from '../margins/index.ts';
import { COMPARED_WORDS, checkName } from '../words/index.ts';
import { quantity } from './quantity.ts';
import { checkSays } from './says.ts';
import { headingDocument } from './wind-document.ts';

/** A check by its verdict, its ratio and the actual gust it holds to. */
export function checkStateDocument({ verdict, result }: Check, system: UnitSystem): CheckState {
  return told<CheckState>({
    verdict,
    ratio: result?.ratio,
    holdsTo: quantity(result?.holdsTo?.gust, 'speed', system),
  });
}

/** A check in words and figures. */
export function checkDocument(assessment: Assessment, check: Check, system: UnitSystem): CheckAnswer {
  const { result } = check;
  const { says, why } = checkSays(assessment, check);
  return told<CheckAnswer>({
    id: check.id,
    kind: check.kind,
    title: checkName(check),
    verdict: check.verdict,
    says,
    why,
    because: check.because,
    needs: check.needs,
    ...(result === undefined ? NO_RESULT : resultDocument(assessment, result, system)),
  });
}

type ResultAnswer = Omit<CheckAnswer, 'id' | 'kind' | 'title' | 'verdict' | 'says' | 'why' | 'because' | 'needs'>;
const NO_RESULT: ResultAnswer = {};

function resultDocument({ input }: Assessment, result: CheckResult, system: UnitSystem): ResultAnswer {
  const { over, torque, holdsTo, areaUsed } = result;
  const basis = enteredBasis(input);
  return told<ResultAnswer>({
    ...comparedDocument(result, system),
    ratioRange: result.ratioRange,
    margin: 1 - result.ratio,
    along: quantity(result.along, 'length', system),
    heading: headingDocument(result.headings, system),
    bySecondMethod: result.bySecondMethod,
    ratioWithoutWind: result.ratioWithoutWind,
    over: over && comparedDocument(over, system),
    torque:
      torque &&
      told<NonNullable<CheckAnswer['torque']>>({
        heldBy: torque.heldBy,
        turnsWith: quantity(torque.turnsWith, 'moment', system),
        turnsUpTo: quantity(torque.turnsUpTo, 'speed', system),
      }),
    holdsTo:
      holdsTo &&
      told<NonNullable<CheckAnswer['holdsTo']>>({
        gust: quantity(holdsTo.gust, 'speed', system),
        design: { ...quantity(holdsTo.design, 'speed', system), basis },
        atBest: quantity(result.holdsToAtBest, 'speed', system),
      }),
    areaUsed: areaUsed && {
      area: quantity(areaUsed.area, 'area', system),
      rated: quantity(areaUsed.rated, 'area', system),
      height: quantity(areaUsed.height, 'length', system),
      ofTower: quantity(areaUsed.ofTower, COMPARED_WORDS[result.of].dimension, system),
    },
  });
}

function comparedDocument({ ratio, of, demand, capacity, height }: Compared, system: UnitSystem) {
  const dimension = COMPARED_WORDS[of].dimension;
  return told<NonNullable<CheckAnswer['over']>>({
    ratio,
    demand: { of, ...quantity(demand, dimension, system) },
    capacity: quantity(capacity, dimension, system),
    where: quantity(height, 'length', system),
  });
}
