# Freedom after rounds of none found: Bayes by log odds.
after_none <- function(free, sensitivity) plogis(qlogis(free) - log1p(-sensitivity))
second("pfree_series", "plogis, qlogis", function(i) {
  bring <- function(free) free * (1 - i$p_intro)
  free <- if (isTRUE(i$discount_first)) bring(i$prior_free) else i$prior_free
  rows <- list()
  for (sensitivity in num(i$ses)) {
    post <- after_none(free, sensitivity)
    rows <- c(rows, list(list(prior_free = free, post_free = post, post_free_after_intro = bring(post))))
    free <- bring(post)
  }
  list(rows = rows)
})
second("pfree_equilibrium", "plogis, qlogis, iterated", function(i) {
  free <- 0.5
  for (round in 1:10000) free <- after_none(free, i$se) * (1 - i$p_intro)
  list(prior_free = free, post_free = after_none(free, i$se))
})
second("sse_for_target", "plogis, qlogis, uniroot", function(i) {
  free <- i$prior_free * (1 - i$p_intro)
  list(prior_after_intro = free, sse_needed = zero(function(s) after_none(free, s) - i$target, 0, 1 - 1e-12))
})
risks <- function(rr, pop) {
  # AR is a multiple of RR whose mean over the population is 1.
  k <- length(rr)
  ratios <- cbind(rr[-1], -diag(rr[1], k - 1, k - 1))
  unname(solve(rbind(pop, ratios), c(1, rep(0, k - 1))))
}
second("adjusted_risk", "solve", function(i) list(ar = risks(num(i$rr), num(i$pop))))
second("scenario_tree", "solve, dbinom", function(i) {
  ar <- risks(num(i$rr), num(i$pop))
  stratum <- unlist(lapply(i$groups, function(g) rep(g$stratum + 1, length(g$clusters))))
  found <- unlist(lapply(i$groups, function(g) vapply(g$clusters, function(c) 1 - dbinom(0, c$n, c$se * i$pstar_unit), 0)))
  missed <- log1p(-found * (ar * i$pstar_cluster)[stratum])
  list(ar = ar, epi = ar * i$pstar_cluster, sse_by_stratum = as.numeric(-expm1(tapply(missed, stratum, sum))), sse = -expm1(sum(missed)))
})
second("sse_two_stage_finite", "dhyper", function(i) {
  se <- num(i$seh)
  list(exact_equal_seh = 1 - none_of(i$H, i$D, length(se), se[1]))
})
second("allocate_risk_based", "solve, expand.grid", function(i) {
  ar <- risks(num(i$rr), num(i$pop))
  worth <- -log1p(-i$se * ar * i$pstar)
  need <- -log1p(-i$target)
  tried <- expand.grid(first = 0:i$caps[[1]], second = 0:i$caps[[2]])
  third <- pmax(0, ceiling((need - tried$first * worth[1] - tried$second * worth[2]) / worth[3] - 1e-9))
  all <- cbind(tried$first, tried$second, third)[third <= i$caps[[3]], ]
  cost <- drop(all %*% num(i$cost))
  n <- all[which.min(cost), ]
  list(ar = ar, cost = min(cost), n = unname(n), sse = -expm1(-sum(n * worth)), proportional_n = qgeom(i$target, i$se * i$pstar) + 1)
})
