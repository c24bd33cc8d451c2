# The partial t of R's lm over every order of the residuals (Freedman & Lane 1983, doi 10.1080/07350015.1983.10509354),
# for tests/domain/trials/held-slope.test.ts. Base R only. Run: Rscript scripts/reference/held_slope.R
orders <- function(v) if (length(v) < 2) list(v) else
  do.call(c, lapply(seq_along(v), function(k) lapply(orders(v[-k]), function(rest) c(v[k], rest))))
within <- function(blocks) {
  all <- list(seq_along(blocks))
  for (rows in split(seq_along(blocks), blocks))
    all <- do.call(c, lapply(all, function(at) lapply(orders(rows), function(to) replace(at, rows, to))))
  all
}
held <- function(y, x, others, blocks, slope = 0) {
  block <- if (length(unique(blocks)) > 1) factor(blocks) else rep(1, length(y))
  Z <- model.matrix(~ block + others)
  reduced <- lm.fit(Z, y - slope * x)
  t_of <- function(v) {
    f <- lm(v ~ Z + x - 1)
    summary(f)$coefficients["x", "t value"]
  }
  fits <- sapply(within(blocks), function(o) t_of(reduced$fitted.values + reduced$residuals[o]))
  seen <- t_of(y - slope * x)
  close <- 1e-7 * max(1, abs(seen))
  c(orders = length(fits), upper = mean(fits >= seen - close), lower = mean(fits <= seen + close))
}
answer <- function(y, x, others, blocks, slopes) {
  block <- if (length(unique(blocks)) > 1) factor(blocks) else rep(1, length(y))
  at <- sapply(slopes, function(d) held(y, x, others, blocks, d))
  list(y = y, x = x, others = others, blocks = blocks, slopes = slopes,
       estimate = unname(coef(lm(y ~ block + others + x))["x"]), orders = at["orders", 1],
       p = pmin(1, 2 * pmin(at["upper", ], at["lower", ])))
}
out <- list(
  one_block = answer(c(4.1, 5.2, 3.9, 6.3, 7.1, 6.6), c(1, 3, 2, 5, 4, 7), cbind(c(2, 1, 4, 3, 6, 5)), rep(1, 6),
                     c(0, 0.3, 0.9, -0.4)),
  two_blocks = answer(c(0.2, 0.5, 0.4, 0.9, 0.1, 0.3, 0.6, 0.35), c(1, 2, 3, 4, 1, 3, 2, 4),
                      cbind(c(0, 1, 0, 1, 1, 0, 0, 1), c(5, 3, 6, 1, 2, 2, 7, 4)), rep(1:2, each = 4), c(0, 0.1, 0.3, -0.2)))
row <- function(v) paste0("[", paste(formatC(v, digits = 15, format = "g", width = 1), collapse = ", "), "]")
entry <- function(e) sprintf(
  '{"y": %s, "x": %s, "others": [%s], "blocks": %s, "slopes": %s, "estimate": %s, "orders": %d, "p": %s}',
  row(e$y), row(e$x), paste(apply(e$others, 2, row), collapse = ", "), row(e$blocks), row(e$slopes),
  formatC(e$estimate, digits = 15, format = "g", width = 1), as.integer(e$orders), row(e$p))
writeLines(sprintf('{\n  "_meta": {"r": "%s", "script": "scripts/reference/held_slope.R"},\n  "one_block": %s,\n  "two_blocks": %s\n}',
  R.version.string, entry(out$one_block), entry(out$two_blocks)), "tests/fixtures/trials/held_slope.json")
