# Distances of the 45 Romano-British sherds, closed to 100, in the scales that are not log-ratios: what the free
# directions of api/domain/reference/scale.ts must give. Base R only.
# Run from the checkout: Rscript scripts/reference/closed_parts.R > tests/fixtures/closed-parts/closed_parts.json
X <- as.matrix(read.csv("tests/fixtures/hsaur3/hsaur3_pottery.csv")[, 2:10])
kiln <- read.csv("tests/fixtures/hsaur3/hsaur3_pottery.csv")$kiln
G1 <- which(kiln == 1)
C <- 100 * X / rowSums(X)

# Closed wt%: any eight of the nine parts carry everything, and D2 does not change with units.
standardised <- mahalanobis(C[, 1:8], colMeans(C[G1, 1:8]), cov(C[G1, 1:8]))

# log10 of closed wt%: the direction of the geometric means is empty to first order and is taken out.
L <- log10(C)
normal <- 10^colMeans(L)
Q <- qr.Q(qr(cbind(normal)), complete = TRUE)[, -1]
P <- L %*% Q
log10free <- mahalanobis(P, colMeans(P[G1, ]), cov(P[G1, ]))

numbers <- function(v) paste0("[", paste(formatC(v, digits = 15, format = "g"), collapse = ", "), "]")
cat("{\n")
cat('  "r": "', R.version.string, '",\n', sep = "")
cat('  "code": "scripts/reference/closed_parts.R",\n')
cat('  "note": "squared distances of all 45 rows from kiln 1 (n 21, p 8), divisor n-1",\n')
cat('  "standardised": ', numbers(standardised), ",\n", sep = "")
cat('  "log10": ', numbers(log10free), ",\n", sep = "")
cat('  "pca_log10_eigenvalues": ', numbers(prcomp(L)$sdev^2), "\n", sep = "")
cat("}\n")
