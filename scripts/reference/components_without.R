# How far each of the 45 Romano-British sherds lies off three principal components of the other 44 (centred
# log-ratios), measured from the mean of the others of its group: what leaveOneOutOff must give. Base R only.
# Run from the checkout: Rscript scripts/reference/components_without.R > tests/fixtures/closed-parts/components_without.json
table <- read.csv("tests/fixtures/hsaur3/hsaur3_pottery.csv")
L <- log(as.matrix(table[, 2:10]))
Z <- L - rowMeans(L)
group <- c(1, 2, 2, 3, 3)[table$kiln]

off <- sapply(seq_len(nrow(Z)), function(i) {
  axes <- prcomp(Z[-i, ])$rotation[, 1:3]
  others <- setdiff(which(group == group[i]), i)
  gap <- Z[i, ] - colMeans(Z[others, ])
  sqrt(sum((gap - axes %*% crossprod(axes, gap))^2))
})

cat("{\n")
cat('  "r": "', R.version.string, '",\n', sep = "")
cat('  "code": "scripts/reference/components_without.R",\n')
cat('  "note": "distance off three components refitted without the sherd, in the order of the table",\n')
cat('  "off": [', paste(formatC(off, digits = 15, format = "g"), collapse = ", "), "]\n", sep = "")
cat("}\n")
