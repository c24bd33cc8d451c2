# R's answers for slip fractions, mixing lines and uptake: Rscript scripts/reference/slip.R
# Writes tests/fixtures/slip/r-slip.json. Base R only; every value below is computed here, from data given here.
out <- list()
put <- function(name, value) out[[name]] <<- value

paint <- c(PbO = 44.1, SiO2 = 37.2, Al2O3 = 5.3, Fe2O3 = 5.1, MnO = 5.2, CaO = 2.8, TiO2 = 0.30)
slip  <- c(PbO = 0.2, SiO2 = 62.5, Al2O3 = 21.4, Fe2O3 = 8.9, MnO = 0.3, CaO = 5.5, TiO2 = 1.20)
batch <- c(PbO = 58.9, SiO2 = 29.4, Al2O3 = 0.2, Fe2O3 = 4.0, MnO = 6.0, CaO = 1.5, TiO2 = 0.01)
ps <- c(0.6, 0.5, 0.20, 0.12, 0.10, 0.08, 0.03)
ss <- c(0.1, 0.7, 0.30, 0.15, 0.05, 0.10, 0.04)
put("paint", paint); put("slip", slip); put("batch", batch); put("paintSigma", ps); put("slipSigma", ss)

closed <- function(x, s) { T <- sum(x); J <- diag(length(x)) - outer(x, rep(1, length(x))) / T; J %*% diag(s^2) %*% t(J) }

# 1. Ordinary weighted least squares: paint ~ a*batch + b*slip, batch and slip exact; f = b/(a+b).
fit <- lm(paint ~ 0 + batch + slip, weights = 1 / ps^2)
ab <- coef(fit)
put("wls", list(f = unname(ab[2] / sum(ab)), chiSquare = sum((residuals(fit) / ps)^2)))

# 2. Tracers: generalised least squares, errors on both sides, closure carried.
tr <- c("TiO2", "Al2O3")
Vp <- closed(paint, ps); Vs <- closed(slip, ss); dimnames(Vp) <- dimnames(Vs) <- list(names(paint), names(paint))
chi <- function(f) { r <- paint[tr] - f * slip[tr]; drop(t(r) %*% solve(Vp[tr, tr] + f^2 * Vs[tr, tr], r)) }
o <- optimize(chi, c(0, 1), tol = 1e-12)
edge <- function(a, b) uniroot(function(f) chi(f) - o$objective - qnorm(.975)^2, c(a, b), tol = 1e-13)$root
put("tracers", list(f = o$minimum, chiSquare = o$objective, low = edge(0, o$minimum), high = edge(o$minimum, 1),
                    p = pchisq(o$objective, 1, lower.tail = FALSE)))

# 3. Batch: errors of paint (scale free) and slip, batch exact; profile over f.
chi2 <- function(f, q) { r <- q * paint - (1 - f) * batch - f * slip; drop(t(r) %*% solve(q^2 * diag(ps^2) + f^2 * Vs, r)) }
prof <- function(f) optimize(function(q) chi2(f, q), c(.8, 1.25), tol = 1e-12)$objective
b <- optimize(prof, c(0, 1), tol = 1e-12)
put("batch_fit", list(f = b$minimum, chiSquare = b$objective, p = pchisq(b$objective, 5, lower.tail = FALSE)))

# 4. Total least squares: equal errors, one slip, one known oxide: the line is the first principal component.
X <- rbind(c(50.2, 31.1, 14.0, 3.1), c(44.9, 35.8, 13.2, 5.2), c(40.1, 38.2, 12.1, 7.4), c(35.3, 42.9, 10.7, 9.0), c(1.1, 67.5, 3.2, 24.8))
pc <- prcomp(X)
d <- pc$rotation[, 1]; m <- colMeans(X)
near <- m - d * m[4] / d[4]
proj <- function(x) m + d * sum((x - m) * d)
far <- proj(X[5, ])
put("tls_points", X)
put("tls", list(near = near, far = far,
  fractions = apply(X[1:4, ], 1, function(x) sum((proj(x) - near) * (far - near)) / sum((far - near)^2)),
  chiSquare = sum(pc$sdev[-1]^2) * (nrow(X) - 1)))

# 5. Anchored line, unequal errors, two slips, two known oxides: minimised outright.
S <- rbind(c(.5, .4, .2, .1), c(.6, .3, .2, .1), c(.4, .4, .3, .2), c(.5, .5, .2, .2), c(.2, .8, .3, .4), c(.2, .7, .3, .5))
Y <- rbind(c(50.2, 31.1, 14.0, 3.1), c(44.9, 35.8, 13.2, 5.2), c(40.1, 38.2, 12.1, 7.4), c(35.3, 42.9, 10.7, 9.0), c(1.1, 67.5, 3.2, 24.8), c(0.8, 68.4, 3.3, 25.1))
cost <- function(th) {
  f <- th[1:4]; near <- c(th[5:7], 0); far <- th[8:11]
  sum(sapply(1:4, function(i) sum(((Y[i, ] - near - f[i] * (far - near)) / S[i, ])^2))) +
  sum(sapply(5:6, function(i) sum(((Y[i, ] - far) / S[i, ])^2)))
}
th <- c(.12, .2, .3, .36, 57, 26, 15.5, 1, 68, 3.2, 25)
for (k in 1:20) th <- optim(th, cost, method = "BFGS", control = list(reltol = 1e-16, maxit = 5000))$par
h <- optimHess(th, cost, control = list(ndeps = rep(1e-4, 11)))
put("line_points", Y); put("line_sigmas", S)
put("line", list(fractions = th[1:4], near = th[5:7], far = th[8:11], chiSquare = cost(th),
                 fractionSigma = sqrt(diag(solve(h / 2)))[1:4]))

# 6. Uptake: non-linear weighted least squares, thickness exact.
t <- c(8, 14, 22, 31, 45, 60); f <- c(.58, .47, .33, .29, .20, .155); s <- c(.02, .02, .015, .015, .01, .01)
put("uptake_data", list(t = t, f = f, s = s))
u1 <- nls(f ~ d / (d + t), start = list(d = 12), weights = 1 / s^2, control = nls.control(tol = 1e-7))
u2 <- nls(f ~ exp(-t / d), start = list(d = 25), weights = 1 / s^2, control = nls.control(tol = 1e-7))
put("uptake_dissolved", list(depth = unname(coef(u1)), chiSquare = sum((resid(u1) / s)^2)))
put("uptake_through", list(depth = unname(coef(u2)), chiSquare = sum((resid(u2) / s)^2)))

# 8. Welch's test of one mean where variances are found from few repeats (recast test: ratios from spots).
wd <- list(a = c(0.02, -0.01, 0.05), b = c(0.11, 0.04), c = c(-0.03, 0.01, 0.02, -0.06, 0.03), d = c(0.09, 0.02, 0.12))
wt <- oneway.test(y ~ g, data.frame(y = unlist(wd), g = rep(names(wd), lengths(wd))))
put("welch_data", wd)
put("welch", list(F = unname(wt$statistic), df = unname(wt$parameter[2]), p = wt$p.value))

num <- function(x) paste(sprintf("%.17g", x), collapse = ", ")
json <- function(x) {
  if (is.list(x)) paste0("{", paste(sprintf('"%s": %s', names(x), sapply(x, json)), collapse = ", "), "}")
  else if (is.matrix(x)) paste0("[", paste(apply(x, 1, function(r) paste0("[", num(r), "]")), collapse = ", "), "]")
  else if (length(x) == 1) num(x)
  else if (!is.null(names(x)) && all(names(x) %in% names(paint))) paste0("{", paste(sprintf('"%s": %.17g', names(x), x), collapse = ", "), "}")
  else paste0("[", num(x), "]")
}
head <- sprintf('"source": "%s, base packages", "code": "scripts/reference/slip.R"', R.version.string)
writeLines(paste0("{", head, ",\n", paste(sprintf('"%s": %s', names(out), sapply(out, json)), collapse = ",\n"), "}"),
           "tests/fixtures/slip/r-slip.json")
