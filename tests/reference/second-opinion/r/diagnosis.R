# A network of conditions and findings, every set of conditions written out; scores of forecasts.
bits <- function(p) -sum(p[p > 0] * log2(p[p > 0]))
network <- function(i) {
  prior <- num(i$prior)
  link <- do.call(rbind, lapply(i$link, num))
  sets <- as.matrix(expand.grid(rep(list(0:1), length(prior))))
  absent <- exp(sets %*% log1p(-link) + rep(log1p(-num(i$leak)), each = nrow(sets)))
  weight <- exp(sets %*% log(prior) + (1 - sets) %*% log1p(-prior))[, 1]
  for (finding in names(i$evidence)) {
    none <- absent[, as.integer(finding) + 1]
    weight <- weight * if (i$evidence[[finding]] == 1) 1 - none else none
  }
  list(sets = sets, absent = absent, evidence = sum(weight), p = weight / sum(weight))
}
posterior_of <- function(p, sets) unname(drop(p %*% sets))
second("quickscore", "expand.grid", function(i) with(network(i), list(p_evidence = evidence, posterior = posterior_of(p, sets))))
second("noisy_or", "expand.grid", function(i) with(network(i), {
  each <- function(p) sum(vapply(posterior_of(p, sets), function(q) bits(c(q, 1 - q)), 0))
  open <- setdiff(seq_len(ncol(absent)) - 1, as.integer(names(i$evidence)))
  about <- function(finding) {
    none <- absent[, finding + 1]
    yes <- sum(p * (1 - none))
    gain <- function(doubt) doubt(p) - yes * doubt(p * (1 - none) / yes) - (1 - yes) * doubt(p * none / (1 - yes))
    c(yes, gain(bits), gain(each))
  }
  told <- lapply(open, about)
  row <- function(at) setNames(lapply(told, `[`, at), as.character(open))
  c(
    list(p_evidence = evidence, posterior = posterior_of(p, sets), entropy_bits = bits(p), p_no_disease = p[1]),
    if (length(open) > 0) list(p_finding = row(1), eig_joint_bits = row(2), eig_sum_of_marginals_bits = row(3))
  )
}))
second("calibration", "glm, wilcox.test", function(i) {
  p <- num(i$p)
  y <- num(i$y)
  both <- coef(glm(y ~ qlogis(p), binomial, control = tight))
  rank <- suppressWarnings(wilcox.test(p[y == 1], p[y == 0], exact = FALSE))
  list(
    brier = mean((p - y)^2), log_loss = -mean(dbinom(y, 1, p, log = TRUE)), auc = unname(rank$statistic) / (sum(y == 1) * sum(y == 0)),
    recal_intercept = both[[1]], recal_slope = both[[2]],
    calibration_in_the_large = coef(glm(y ~ 1, binomial, offset = qlogis(p), control = tight))[[1]]
  )
})
second("multiclass_scores", "rank", function(i) {
  P <- do.call(rbind, lapply(i$P, num))
  true <- cbind(seq_len(nrow(P)), num(i$y) + 1)
  place <- t(apply(-P, 1, rank, ties.method = "first"))[true]
  hit <- matrix(0, nrow(P), ncol(P))
  hit[true] <- 1
  list(brier = mean(rowSums((P - hit)^2)), log_loss = -mean(log(P[true])), top1 = mean(place == 1), top3 = mean(place <= 3), mean_reciprocal_rank = mean(1 / place))
})
