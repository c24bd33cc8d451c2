# Answers of R on published sets, for tests/domain/trials. Run: Rscript scripts/reference/trials.R
# Needs brglm2 0.9 (Firth by adjusted scores), ordinal, survival, coin. Every entry carries the code that gave it.
suppressMessages({library(brglm2); library(ordinal); library(survival); library(coin)})
out <- list()
put <- function(name, note, code) {
  out[[name]] <<- list(code = paste(deparse(substitute(code)), collapse = "\n"), note = note, value = eval(code))
}

# Penalised log-likelihood l + 0.5 log det(X'WX), full X also where a coefficient is held; base R only.
penalised <- function(b, X, y, offset = 0) {
  eta <- drop(X %*% b) + offset
  w <- plogis(eta) * plogis(-eta)
  sum(y * plogis(eta, log.p = TRUE) + (1 - y) * plogis(-eta, log.p = TRUE)) +
    0.5 * as.numeric(determinant(crossprod(X * sqrt(w)))$modulus)
}
held <- function(k, v, b, X, y) {
  f <- function(r) -penalised(append(r, v, k - 1), X, y)
  r <- b[-k]
  for (i in 1:4) r <- optim(r, f, method = "BFGS", control = list(reltol = 1e-15, maxit = 2000))$par
  -f(r)
}
profiled <- function(k, b, se, X, y, level = 0.95) {
  top <- penalised(b, X, y)
  g <- function(v) 2 * (top - held(k, v, b, X, y)) - qchisq(level, 1)
  lo <- b[k] - se[k]; while (g(lo) < 0) lo <- lo - se[k]
  hi <- b[k] + se[k]; while (g(hi) < 0) hi <- hi + se[k]
  c(uniroot(g, c(lo, b[k]), tol = 1e-9)$root, uniroot(g, c(b[k], hi), tol = 1e-9)$root)
}
firth <- function(formula, data) {
  f <- glm(formula, data = data, family = binomial, method = "brglmFit", type = "AS_mean",
           epsilon = 1e-13, maxit = 500)
  X <- model.matrix(f); y <- f$y; b <- unname(coef(f))
  se <- unname(sqrt(diag(solve(crossprod(X * sqrt(f$fitted.values * (1 - f$fitted.values)))))))
  ci <- sapply(seq_along(b), function(k) profiled(k, b, se, X, y))
  lr <- sapply(seq_along(b), function(k) 2 * (penalised(b, X, y) - held(k, 0, b, X, y)))
  list(names = names(coef(f)), coef = b, se = se, low = ci[1, ], high = ci[2, ], penalised_lr = lr,
       p = pchisq(lr, 1, lower.tail = FALSE))
}

data(endometrial, package = "brglm2")
out$endometrial <- list(
  note = "Heinze & Schemper 2002, Statistics in Medicine 21:2409-2419, doi 10.1002/sim.1047, as carried by brglm2; NV separates HG",
  value = lapply(as.list(endometrial), as.numeric))
put("endometrial_firth", "brglm2 brglmFit AS_mean; profile limits and penalised LR by optim + uniroot, about 7 digits",
    firth(HG ~ NV + PI + EH, endometrial))

out$infert <- list(
  note = "Trichopoulos et al. 1976, Br J Obstet Gynaecol 83:645-650, doi 10.1111/j.1471-0528.1976.tb00904.x; R datasets::infert",
  value = lapply(as.list(infert[c("case", "spontaneous", "induced", "stratum", "age", "parity")]), as.numeric))
put("infert_glm", "maximum likelihood", {
  f <- glm(case ~ spontaneous + induced, data = infert, family = binomial, epsilon = 1e-14)
  list(coef = unname(coef(f)), se = unname(sqrt(diag(vcov(f)))), loglik = as.numeric(logLik(f)))
})
put("infert_firth", "as endometrial_firth", firth(case ~ spontaneous + induced, infert))
put("infert_clogit_spontaneous", "exact conditional likelihood within the 83 matched sets", {
  f <- clogit(case ~ spontaneous + strata(stratum), data = infert, method = "exact",
              control = coxph.control(eps = 1e-11, toler.chol = 1e-14, iter.max = 50))
  list(coef = unname(coef(f)), se = unname(sqrt(diag(vcov(f)))), loglik = f$loglik)
})

data(wine, package = "ordinal")
out$wine <- list(
  note = "Randall 1989, Biometrical Journal 31:781-793, doi 10.1002/bimj.4710310703 (bitterness of white wine), R ordinal::wine",
  value = list(rating = as.integer(wine$rating), warm = as.integer(wine$temp == "warm"),
               contact = as.integer(wine$contact == "yes"), judge = as.integer(wine$judge), bottle = as.integer(wine$bottle)))
put("wine_clm", "logit P(Y<=j) = theta_j - x'beta; profile likelihood limits by ordinal::confint", {
  f <- clm(rating ~ temp + contact, data = wine, control = clm.control(gradTol = 1e-12, maxIter = 200))
  ci <- confint(f, type = "profile", nsteps = 40)
  list(thresholds = unname(f$alpha), beta = unname(f$beta), se = unname(sqrt(diag(vcov(f)))),
       loglik = as.numeric(f$logLik), profile = unname(ci))
})

# Proportional odds with Jeffreys' penalty: l + 0.5 log det of the expected information, information by numeric
# derivatives of the category probabilities, maximised by Nelder-Mead then BFGS: independent of our own algebra.
catprob <- function(th, x, K) {
  a <- th[1:(K - 1)]; b <- th[-(1:(K - 1))]
  cum <- c(0, plogis(a - sum(x * b)), 1)
  diff(cum)
}
po <- function(th, X, y, K, pen) {
  if (any(diff(th[1:(K - 1)]) <= 0)) return(-1e10)
  info <- matrix(0, length(th), length(th)); l <- 0
  for (i in seq_along(y)) {
    p <- catprob(th, X[i, ], K)
    if (any(p < 1e-300)) return(-1e10)
    l <- l + log(p[y[i]])
    if (pen) {
      J <- sapply(seq_along(th), function(k) {
        h <- 1e-5; e <- replace(numeric(length(th)), k, h)
        (8 * (catprob(th + e, X[i, ], K) - catprob(th - e, X[i, ], K)) -
           (catprob(th + 2 * e, X[i, ], K) - catprob(th - 2 * e, X[i, ], K))) / (12 * h)
      })
      info <- info + t(J) %*% (J / p)
    }
  }
  l + if (pen) 0.5 * as.numeric(determinant(info)$modulus) else 0
}
jeffreys <- function(X, y, K, start) {
  f <- function(th) -po(th, X, y, K, TRUE)
  o <- optim(start, f, control = list(maxit = 5000, reltol = 1e-12))
  for (i in 1:3) o <- optim(o$par, f, method = "BFGS", control = list(reltol = 1e-15, maxit = 500, ndeps = rep(1e-4, length(start))))
  list(thresholds = o$par[1:(K - 1)], beta = o$par[-(1:(K - 1))], penalised_loglik = -o$value)
}
g <- expand.grid(temp = c(-1, 1), soak = c(-1, 1), flux = c(-1, 1)); g <- rbind(g, g)
grade <- c(1, 2, 2, 3, 2, 3, 2, 4, 1, 3, 1, 3, 2, 2, 3, 4)
put("ordinal_jeffreys", "invented data of misc_models.json, four grades", jeffreys(as.matrix(g), grade, 4, c(-3, 0.5, 4, 2, 1, 1)))
separated <- c(1, 2, 1, 3, 1, 2, 1, 3, 1, 3, 1, 2, 1, 3, 1, 3)
out$ordinal_separated <- list(note = "INVENTED; grade 1 exactly where temp is -1: complete separation",
  value = list(temp = g$temp, soak = g$soak, flux = g$flux, grade = separated))
put("ordinal_separated_jeffreys", "maximum likelihood does not exist here",
    jeffreys(as.matrix(g), separated, 3, c(0, 2.5, 2, 0, 0)))

# Exact permutation, two unequal samples and blocks, by coin.
u <- data.frame(y = c(4.1, 5.2, 3.9, 6.3, 7.1, 6.6, 5.8), x = factor(c("a", "a", "a", "b", "b", "b", "b")))
put("coin_two_sample", "one-sided exact p of coin::oneway_test; INVENTED data", {
  list(y = u$y, x = as.integer(u$x == "b"),
       p_less = as.numeric(pvalue(oneway_test(y ~ x, data = u, distribution = "exact", alternative = "less"))),
       p_greater = as.numeric(pvalue(oneway_test(y ~ x, data = u, distribution = "exact", alternative = "greater"))))
})
put("exact_logistic_limits", "conditional exact limits (fisher.test, 2x2): log odds ratio; INVENTED counts", {
  m <- matrix(c(7, 2, 3, 8), 2)
  f <- fisher.test(m)
  list(table = c(m), log_estimate = unname(log(f$estimate)), log_low = log(f$conf.int[1]), log_high = log(f$conf.int[2]),
       p_greater = fisher.test(m, alternative = "greater")$p.value)
})
put("mantelhaen_exact", "exact conditional common odds ratio over education, infert as above: case by any spontaneous abortion; levels 0-5yrs, 6-11yrs, 12+ yrs", {
  m <- table(infert$case, infert$spontaneous > 0, infert$education)
  f <- mantelhaen.test(m, exact = TRUE)
  list(education = as.integer(infert$education), log_estimate = unname(log(f$estimate)), log_low = log(f$conf.int[1]),
       log_high = log(f$conf.int[2]), p_less = mantelhaen.test(m, exact = TRUE, alternative = "less")$p.value,
       p_greater = mantelhaen.test(m, exact = TRUE, alternative = "greater")$p.value)
})

out[["_meta"]] <- list(r = R.version.string, brglm2 = as.character(packageVersion("brglm2")),
  ordinal = as.character(packageVersion("ordinal")), survival = as.character(packageVersion("survival")),
  coin = as.character(packageVersion("coin")), script = "scripts/reference/trials.R")

json <- function(v) {
  if (is.null(v)) return("null")
  if (is.list(v)) {
    if (is.null(names(v))) return(paste0("[", paste(sapply(v, json), collapse = ", "), "]"))
    return(paste0("{", paste(sprintf("%s: %s", sapply(names(v), json), sapply(v, json)), collapse = ", "), "}"))
  }
  if (is.matrix(v)) return(paste0("[", paste(apply(v, 1, function(r) json(as.numeric(r))), collapse = ", "), "]"))
  one <- if (is.character(v)) sprintf('"%s"', gsub("\n", "\\\\n", gsub('"', '\\\\"', gsub("\\\\", "\\\\\\\\", v))))
         else if (is.logical(v)) tolower(as.character(v)) else formatC(v, digits = 15, format = "g", width = 1)
  if (length(one) == 1) one else paste0("[", paste(one, collapse = ", "), "]")
}
body <- paste(sprintf("  %s: %s", sapply(names(out), json), sapply(out, json)), collapse = ",\n")
writeLines(paste0("{\n", body, "\n}"), "tests/fixtures/trials/r_answers.json")
