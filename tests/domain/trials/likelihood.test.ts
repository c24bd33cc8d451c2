import { describe, expect, it } from 'vitest';
import { fitLikelihood } from '../../../api/domain/trials/likelihood.ts';
import { logisticModel } from '../../../api/domain/trials/logistic-model.ts';
import { ordinalModel } from '../../../api/domain/trials/ordinal-model.ts';
import { profileLimits } from '../../../api/domain/trials/profile-limits.ts';
import { expectClose } from '../../support/close.ts';
import { MISC } from '../../support/romano-british.ts';
import { rowsOfColumns, TRIAL_ANSWERS } from '../../support/trial-answers.ts';

const d = MISC.firth_data.value;
const ones = d.temp.map(() => 1);
const names = ['(constant)', 'temp', 'soak', 'flux'];
const factorial = (yes: number[]) =>
  logisticModel({ names, rows: rowsOfColumns([ones, d.temp, d.soak, d.flux]) }, yes);

describe('Firth’s logistic regression is that of R (brglm2, misc_models.json)', () => {
  for (const [outcome, entry] of [
    ['crack', 'firth_crack_separated'],
    ['blister', 'firth_blister'],
    ['craze', 'firth_craze'],
  ] as const)
    it(`gives coefficients and standard errors for ${outcome}`, () => {
      const fit = fitLikelihood(factorial(d[outcome]), { penalised: true });
      expectClose(fit.at, MISC[entry].value.coef, { relative: 1e-9, floor: 1 });
      expectClose(
        fit.covariance.map((row, k) => Math.sqrt(row[k]!)),
        MISC[entry].value.se_wald,
      );
    });

  for (const [outcome, entry] of [
    ['crack', 'firth_penalised_lr_temp_crack'],
    ['blister', 'firth_penalised_lr_temp_blister'],
    ['craze', 'firth_penalised_lr_temp_craze'],
  ] as const)
    it(`gives the penalised likelihood-ratio test of temp on ${outcome}`, () => {
      const model = factorial(d[outcome]);
      const fit = fitLikelihood(model, { penalised: true });
      const r = MISC[entry].value;
      expectClose(fit.logLik, r.penalised_loglik_full);
      const limits = profileLimits(model, fit, { place: 1, penalised: true, level: 0.95 });
      expectClose([limits.chiSquare, limits.p], [r.chisq, r.p], { relative: 1e-7, floor: 0 });
    });

  it('gives the maximum-likelihood answer for craze, where it exists', () => {
    const fit = fitLikelihood(factorial(d.craze), { penalised: false });
    expectClose(fit.at, MISC.ml_logistic_craze.value.coef, { floor: 1 });
    expectClose(-2 * fit.logLik, MISC.ml_logistic_craze.value.deviance);
  });

  it('has no greatest likelihood without the penalty where temp separates crack', () => {
    expect(() => fitLikelihood(factorial(d.crack), { penalised: false })).toThrow(
      /greatest likelihood|positive definite/,
    );
  });
});

describe('Firth’s logistic regression on published sets is that of R', () => {
  const { endometrial, infert } = TRIAL_ANSWERS;
  const endo = logisticModel(
    {
      names: ['(constant)', 'NV', 'PI', 'EH'],
      rows: rowsOfColumns([
        endometrial.value.HG.map(() => 1),
        endometrial.value.NV,
        endometrial.value.PI,
        endometrial.value.EH,
      ]),
    },
    endometrial.value.HG,
  );
  const births = logisticModel(
    {
      names: ['(constant)', 'spontaneous', 'induced'],
      rows: rowsOfColumns([infert.value.case.map(() => 1), infert.value.spontaneous, infert.value.induced]),
    },
    infert.value.case,
  );

  for (const [name, model, entry] of [
    ['endometrial (Heinze & Schemper 2002)', endo, 'endometrial_firth'],
    ['infert (Trichopoulos et al. 1976)', births, 'infert_firth'],
  ] as const)
    it(`gives estimates, profile limits and tests for ${name}`, () => {
      const r = TRIAL_ANSWERS[entry].value;
      const fit = fitLikelihood(model, { penalised: true });
      const limits = model.names.map((_, place) =>
        profileLimits(model, fit, { place, penalised: true, level: 0.95 }),
      );
      expectClose(fit.at, r.coef, { relative: 1e-9, floor: 1e-2 });
      expectClose(
        limits.map((l) => [l.se, l.low!, l.high!, l.chiSquare]),
        rowsOfColumns([r.se, r.low, r.high, r.penalised_lr]),
        { relative: 1e-6, floor: 1e-2 },
      );
    });

  it('prints the published limits of NV: 0.61 to 7.85, where maximum likelihood has none', () => {
    const fit = fitLikelihood(endo, { penalised: true });
    const { low, high } = profileLimits(endo, fit, { place: 1, penalised: true, level: 0.95 });
    expect([low!.toFixed(2), high!.toFixed(2)]).toEqual(['0.61', '7.85']);
  });

  it('gives the maximum-likelihood answer for infert', () => {
    const fit = fitLikelihood(births, { penalised: false });
    const r = TRIAL_ANSWERS.infert_glm.value;
    expectClose(fit.at, r.coef);
    expectClose(
      fit.covariance.map((row, k) => Math.sqrt(row[k]!)),
      r.se,
    );
    expectClose(fit.logLik, r.loglik);
  });
});

describe('proportional odds are those of R', () => {
  const o = MISC.ordinal_data.value;
  const grades: number[] = o.grade.map((g: number) => g - 1);
  const rows = rowsOfColumns([o.temp, o.soak, o.flux]);
  const model = ordinalModel({ names: ['temp', 'soak', 'flux'], rows }, grades);

  it('gives thresholds, effects and log-likelihood of clm and polr (misc_models.json)', () => {
    const fit = fitLikelihood(model, { penalised: false });
    const r = MISC.clm_logit.value;
    expectClose(fit.at, [...r.thresholds, ...r.beta]);
    expectClose(fit.logLik, r.loglik);
    expectClose(fit.at, [...MISC.polr_logit.value.zeta, ...MISC.polr_logit.value.coef], { relative: 1e-6 });
  });

  it('gives the likelihood-ratio tests of clm (misc_models.json)', () => {
    const fit = fitLikelihood(model, { penalised: false });
    const tests = [3, 4, 5].map((place) =>
      profileLimits(model, fit, { place, penalised: false, level: 0.95 }),
    );
    expectClose([tests.map((t) => t.chiSquare), tests.map((t) => t.p)], MISC.clm_lr_tests.value, {
      relative: 1e-7,
      floor: 0,
    });
  });

  it('gives the bitterness of wine (Randall 1989): effects and profile limits', () => {
    const { value } = TRIAL_ANSWERS.wine;
    const r = TRIAL_ANSWERS.wine_clm.value;
    const wine = ordinalModel(
      { names: ['warm', 'contact'], rows: rowsOfColumns([value.warm, value.contact]) },
      value.rating.map((g: number) => g - 1),
    );
    const fit = fitLikelihood(wine, { penalised: false });
    expectClose(fit.at, [...r.thresholds, ...r.beta]);
    expectClose(fit.logLik, r.loglik);
    const limits = [4, 5].map((place) => profileLimits(wine, fit, { place, penalised: false, level: 0.95 }));
    expectClose(
      limits.map((l) => [l.low!, l.high!]),
      r.profile,
      { relative: 1e-5 },
    );
  });

  it('stays finite under complete separation with Jeffreys’ penalty, as R’s direct search finds', () => {
    const s = TRIAL_ANSWERS.ordinal_separated.value;
    const r = TRIAL_ANSWERS.ordinal_separated_jeffreys.value;
    const apart = ordinalModel(
      { names: ['temp', 'soak', 'flux'], rows: rowsOfColumns([s.temp, s.soak, s.flux]) },
      s.grade.map((g: number) => g - 1),
    );
    const fit = fitLikelihood(apart, { penalised: true });
    expectClose(fit.at, [...r.thresholds, ...r.beta], { relative: 3e-5 });
    expect(fit.logLik).toBeGreaterThanOrEqual(r.penalised_loglik - 1e-9);
    const full = fitLikelihood(model, { penalised: true });
    expectClose(
      full.at,
      [...TRIAL_ANSWERS.ordinal_jeffreys.value.thresholds, ...TRIAL_ANSWERS.ordinal_jeffreys.value.beta],
      { relative: 3e-5 },
    );
  });

  it('is Firth’s logistic regression where there are two grades', () => {
    const two = ordinalModel(
      { names: ['temp', 'soak', 'flux'], rows: rowsOfColumns([d.temp, d.soak, d.flux]) },
      d.blister,
    );
    const fit = fitLikelihood(two, { penalised: true });
    const [constant, ...effects] = MISC.firth_blister.value.coef;
    expectClose(fit.at, [-constant, ...effects]);
  });

  it('takes each slope of likelihood and penalty from its closed form', () => {
    const at = [-2, 0.3, 2.5, 0.7, -0.4, 1.1];
    const h = 1e-5;
    const numeric = (f: (at: number[]) => number) =>
      at.map((v, k) => (f(at.with(k, v + h)) - f(at.with(k, v - h))) / (2 * h));
    expectClose(model.score(at), numeric(model.logLik), { relative: 1e-6, floor: 1 });
    const { penaltyScore, ...plain } = model;
    const fitted = fitLikelihood(plain, { penalised: true });
    expectClose(fitted.at, fitLikelihood({ ...plain, penaltyScore: penaltyScore! }, { penalised: true }).at, {
      relative: 1e-7,
    });
  });
});

describe('what cannot be fitted says so', () => {
  it('names a column that follows from others', () => {
    const rows = [0, 1, 0, 1].map((v) => [1, v, 1 - v]);
    expect(() =>
      fitLikelihood(logisticModel({ names: ['a', 'b', 'c'], rows }, [0, 1, 1, 0]), { penalised: true }),
    ).toThrow('column 3 follows from the columns before it');
  });

  it('wants a grade seen between others', () => {
    expect(() => ordinalModel({ names: ['a'], rows: [[0], [1], [2]] }, [0, 2, 2])).toThrow(
      'needs every grade seen; grade 1 is not',
    );
    expect(() => ordinalModel({ names: ['a'], rows: [[0], [1]] }, [0, 0])).toThrow('two grades or more');
  });

  it('wants one outcome a row', () => {
    expect(() => logisticModel({ names: ['a'], rows: [[1], [1]] }, [1])).toThrow(
      'one outcome a row; found 1 for 2',
    );
  });
});
