# Thresholds as the shares at which two utilities cross; values of information by integration and sums.
second("thresholds", "uniroot", function(i) {
  treat <- function(p) p * i$benefit - (1 - p) * i$harm
  test <- function(p, cost = i$test_cost) p * i$se * i$benefit - (1 - p) * (1 - i$sp) * i$harm - cost
  at <- zero(treat, 0, 1)
  list(
    treat_threshold = at, testing_threshold = zero(test, 0, 1), test_treat_threshold = zero(function(p) test(p) - treat(p), 0, 1),
    max_test_cost = test(at, 0)
  )
})
second("evpi_evsi_beta", "integrate, VGAM::dbetabinom.ab", function(i) {
  cost <- function(p) pmin(i$cost_treat, i$loss_per_p * p)
  mean <- i$a / (i$a + i$b)
  turn <- min(1, i$cost_treat / i$loss_per_p)
  part <- function(from, to) integrate(function(p) cost(p) * dbeta(p, i$a, i$b), from, to, rel.tol = 1e-12)$value
  row <- function(n) {
    x <- 0:n
    evsi <- cost(mean) - sum(VGAM::dbetabinom.ab(x, n, i$a, i$b) * cost((i$a + x) / (i$a + i$b + n)))
    list(evsi = evsi, engs = evsi - i$cost_per_unit * n - i$cost_fixed * (n > 0))
  }
  rows <- lapply(num(i$ns), row)
  list(
    prior_mean = mean, loss_now = cost(mean), evpi = cost(mean) - part(0, turn) - part(turn, 1), rows = rows,
    best_n = num(i$ns)[which.max(vapply(rows, `[[`, 0, "engs"))]
  )
})
second("evsi_imperfect_test", "integrate, dbinom, dbeta", function(i) {
  over <- function(f) integrate(function(p) f(p) * dbeta(p, i$a, i$b), 0, 1, rel.tol = 1e-11)$value
  after <- function(x) {
    seen <- function(p) dbinom(x, i$n, p * i$se + (1 - p) * (1 - i$sp))
    min(i$cost_treat * over(seen), i$loss_per_p * over(function(p) p * seen(p)))
  }
  list(evsi = min(i$cost_treat, i$loss_per_p * i$a / (i$a + i$b)) - sum(vapply(0:i$n, after, 0)))
})
second("evpi_discrete", "matrix product", function(i) {
  utility <- do.call(rbind, lapply(i$utilities, num))
  expected <- drop(utility %*% num(i$prior))
  list(expected = expected, best = which.max(expected) - 1, evpi = sum(num(i$prior) * apply(utility, 2, max)) - max(expected))
})
