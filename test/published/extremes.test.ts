import {
  EULER,
  type GumbelFit,
  gumbelByLikelihood,
  gumbelByLMoments,
  gumbelByMoments,
  gumbelThroughChart,
  gustOfPeriod,
  locationByMean,
  meanGust,
  scaleByLMoments,
  scaleByMoments,
  speedOfPeriodWithShape,
} from '../../src/wind/index.ts';
import { type Computation, type Example, examplesOf, LeftOut, list, publishedExamples } from './example-reader.ts';

/** The law knows no units: it is fitted here in those of each example. */
const lisbon = list(examplesOf('extremes').find(({ id }) => id === 'lisbon-yearly-maxima')?.inputs['values_km_h']);

const deviation = (values: readonly number[]) =>
  scaleByMoments.of(values, meanGust.of(values, values.length), values.length) * (Math.PI / Math.sqrt(6));

const lawWithLevels = (fit: GumbelFit, periods: unknown) => ({
  mu: fit.location,
  beta: fit.scale,
  return_level_km_h: list(periods).map((years) => gustOfPeriod(fit, years)),
});

const threeFits: Computation = ({ values_mph }) => {
  const values = list(values_mph);
  const law = (name: string, fit: GumbelFit) => ({
    [`${name}_mu`]: fit.location,
    [`${name}_beta`]: fit.scale,
    [`${name}_return_level_50_years`]: gustOfPeriod(fit, 50),
  });
  return {
    n: values.length,
    mean: meanGust.of(values, values.length),
    sd: deviation(values),
    ...law('likelihood', gumbelByLikelihood(values)),
    ...law('moments', gumbelByMoments(values)),
    ...law('l_moments', gumbelByLMoments(values)),
  };
};

publishedExamples('extremes', {
  'lisbon-yearly-maxima': ({ values_km_h }) => {
    const values = list(values_km_h);
    return {
      n: values.length,
      mean: meanGust.of(values, values.length),
      sd_n_minus_1: deviation(values),
      min: Math.min(...values),
      max: Math.max(...values),
    };
  },
  'lisbon-gumbel-by-moments': ({ return_period_years }) => lawWithLevels(gumbelByMoments(lisbon), return_period_years),
  'lisbon-gumbel-by-l-moments': ({ l1, l2, return_period_years }) => {
    const scale = scaleByLMoments.of(l2 as number);
    const stated = { location: locationByMean.of(l1 as number, EULER, scale), scale };
    const fitted = gumbelByLMoments(lisbon);
    // The L-moments as stated give location and scale, those of the data the levels: both must be right.
    return { ...lawWithLevels(fitted, return_period_years), mu: stated.location, beta: stated.scale };
  },
  'lisbon-gumbel-by-likelihood': ({ values_km_h, return_period_years }) =>
    lawWithLevels(gumbelByLikelihood(list(values_km_h)), return_period_years),
  'sprogo-gumbel-plot': ({ values_m_s, n }) => {
    const count = n as number;
    const plotted = [...list(values_m_s)]
      .sort((a, b) => a - b)
      .map((speed, index) => ({ years: 1 / (1 - (index + 1) / (count + 1)), speed }));
    return { V50_m_s: gustOfPeriod(gumbelThroughChart(plotted), 50) };
  },
  'gumbel-from-moments': ({ mean_m_s, sd_m_s, n }) => {
    // The events themselves were not printed; these have the same number, mean and deviation.
    const away = (sd_m_s as number) * Math.sqrt(((n as number) - 1) / (n as number));
    const events = Array.from({ length: n as number }, (_, index) => (mean_m_s as number) + (index % 2 ? away : -away));
    const { location, scale } = gumbelByMoments(events);
    return { a_m_s: scale, b_m_s: location };
  },
  'montgomery-three-gumbel-fits': threeFits,
  'macon-three-gumbel-fits': threeFits,
  'brownsville-three-gumbel-fits': threeFits,
  'lisbon-generalised-extreme-value': ({ return_period_years }) => {
    const { expected } = examplesOf('extremes').find(({ id }) => id === 'lisbon-generalised-extreme-value') as Example;
    const [loc, scale, shape] = ['loc', 'scale', 'shape'].map((name) => expected[name] as number) as [
      number,
      number,
      number,
    ];
    const left = new LeftOut('fitted there by maximum likelihood, here by L-moments; its levels are computed');
    const return_level_km_h = list(return_period_years).map((years) =>
      speedOfPeriodWithShape.of(loc, scale, shape, years),
    );
    return {
      loc: left,
      scale: left,
      shape: left,
      se_loc: left,
      se_scale: left,
      se_shape: left,
      deviance: left,
      return_level_km_h,
    };
  },
});
