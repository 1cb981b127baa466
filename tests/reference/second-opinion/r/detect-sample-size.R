# How many to examine.
slack <- 1 + 1e-12 # an exact tie counts as reached
none_of <- function(N, D, n, se) sum(dhyper(0:D, D, N - D, n) * (1 - se)^(0:D))
smallest_of <- function(N, D, level, se) which(vapply(0:N, function(n) none_of(N, D, n, se), 0) <= (1 - level) * slack)[1] - 1
second("n_detect_binomial", "qgeom, pgeom", function(i) {
  n <- qgeom(conf(i), i$p * given(i$se, 1)) + 1
  list(n = n, prob_detect = pgeom(n - 1, i$p * given(i$se, 1)))
})
second("n_detect_hypergeometric", "dhyper", function(i) {
  se <- given(i$se, 1)
  n <- smallest_of(i$N, i$D, conf(i), se)
  if (is.na(n)) return(list(n = NA, max_prob_detect = 1 - none_of(i$N, i$D, i$N, se)))
  list(n = n, prob_detect = 1 - none_of(i$N, i$D, n, se), prob_detect_n_minus_1 = 1 - none_of(i$N, i$D, n - 1, se))
})
positives <- function(N, D, n, se, sp) {
  if (is.null(N)) return(dbinom(0:n, n, D * se + (1 - D) * (1 - sp)))
  drop(vapply(0:min(n, D), function(y) {
    both <- outer(dbinom(0:y, y, se), dbinom(0:(n - y), n - y, 1 - sp))
    tapply(both, row(both) + col(both), sum)
  }, numeric(n + 1)) %*% dhyper(0:min(n, D), D, N - D, n))
}
second("surveillance_prob", "dhyper, dbinom", function(i) {
  found <- positives(i$N, i$D, i$n, i$se, i$sp)
  list(se_pop = sum(found[-(1:i$c)]), sp_pop = pbinom(i$c - 1, i$n, 1 - i$sp), p_exact_c_minus_1 = found[i$c])
})
smallest_survey <- function(N, D, se, sp, miss, alarm) {
  n <- 1
  repeat {
    c <- qbinom(1 - alarm, n, 1 - sp) + 1
    missed <- sum(positives(N, D, n, se, sp)[1:c])
    if (missed <= miss) return(list(n = n, c = c, missed = missed))
    n <- n + 1
  }
}
second("n_cutpoint_survey", "qbinom, dhyper, dbinom", function(i) {
  at <- smallest_survey(i$N, i$D, i$se, i$sp, given(i$alpha, 0.05), given(i$beta, 0.05))
  list(n = at$n, c = at$c, se_pop = 1 - at$missed, sp_pop = pbinom(at$c - 1, at$n, 1 - i$sp))
})
second("n_cutpoint_infinite", "qbinom, dbinom", function(i) {
  at <- smallest_survey(NULL, i$p, i$se, i$sp, given(i$alpha, 0.05), given(i$beta, 0.05))
  list(n = at$n, max_positives_if_free = at$c - 1, c = at$c, miss = at$missed, false_alarm = pbinom(at$c - 1, at$n, 1 - i$sp, lower.tail = FALSE))
})
colonies_of <- function(i, m) {
  se <- pbinom(0, m, i$p_within * i$se, lower.tail = FALSE)
  if (is.null(i$H)) return(qgeom(conf(i), i$p_cluster * se) + 1)
  smallest_of(i$H, max(1, round(i$H * i$p_cluster)), conf(i), se)
}
second("two_stage", "pbinom, qgeom, dhyper", function(i) {
  se <- pbinom(0, i$m, i$p_within * i$se, lower.tail = FALSE)
  of_many <- list(se_cluster = se, clusters_binomial = qgeom(conf(i), i$p_cluster * se) + 1)
  if (is.null(i$H)) of_many else c(of_many, clusters_hypergeometric = colonies_of(i, i$m))
})
second("least_cost_two_stage", "pbinom, dhyper", function(i) {
  colonies <- vapply(1:i$mmax, function(m) colonies_of(i, m), 0)
  cost <- colonies * (i$cost_cluster + 1:i$mmax * i$cost_unit)
  m <- which.min(cost)
  list(m = m, clusters = colonies[m], cost = cost[m], se_cluster = pbinom(0, m, i$p_within * i$se, lower.tail = FALSE))
})
