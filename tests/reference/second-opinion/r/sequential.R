# Sequential plans, worked out backwards from the last bee (the library goes forwards).
log_ratio <- function(x, p0, p1) dbinom(x, 1, p1, log = TRUE) - dbinom(x, 1, p0, log = TRUE)
lines_of <- function(p0, p1, alpha, beta) {
  per_found <- log_ratio(1, p0, p1) - log_ratio(0, p0, p1)
  list(slope = -log_ratio(0, p0, p1) / per_found, h0 = log(beta / (1 - alpha)) / per_found, h1 = log((1 - beta) / alpha) / per_found)
}
near <- 1e-12
second("sprt_lines", "dbinom", function(i) {
  lines <- lines_of(i$p0, i$p1, i$alpha, i$beta)
  bees <- 1:1000
  c(lines, min_n_low = which(0 <= lines$h0 + lines$slope * bees + near)[1], min_n_high = which(bees >= lines$h1 + lines$slope * bees - near)[1])
})
# What is expected from each count on, at the last bee and then back to the first: one column for each quantity.
backwards <- function(n_max, p, last, stop_at) {
  value <- last(0:n_max)
  for (n in (n_max - 1):0) {
    x <- 0:n
    value <- (1 - p) * value[x + 1, , drop = FALSE] + p * value[x + 2, , drop = FALSE]
    if (n > 0) value <- stop_at(n, x, value)
  }
  value[1, ]
}
second("sprt_exact", "backward recursion", function(i) {
  lines <- lines_of(i$p0, i$p1, i$alpha, i$beta)
  n_min <- given(i$n_min, 1)
  batch <- given(i$batch, 1)
  low <- function(n, x) x <= lines$h0 + lines$slope * n + near
  high <- function(n, x) x >= lines$h1 + lines$slope * n - near
  stopped <- function(n, x, is_low, is_high, value) {
    for (each in which(is_low | is_high)) value[each, ] <- c(is_low[each], is_high[each], 0, n, n^2, 0)
    value
  }
  row <- function(p) {
    last <- function(x) {
      n <- i$n_max
      midline <- given(i$final, "midline") == "midline"
      is_low <- x <= lines$slope * n + near
      open <- cbind(midline & is_low, midline & !is_low, rep(!midline, length(x)), n, n^2, 1)
      stopped(n, x, low(n, x), high(n, x), open)
    }
    at <- backwards(i$n_max, p, last, function(n, x, value) {
      if (n < n_min || (n - n_min) %% batch != 0) value else stopped(n, x, low(n, x), high(n, x), value)
    })
    list(p_low = at[1], p_high = at[2], p_undecided = at[3], asn = at[4], sd_n = sqrt(at[5] - at[4]^2), p_reach_nmax = at[6])
  }
  list(rows = lapply(num(i$ps), row))
})
# Two tests side by side: the state is what each has said (0 open, 1 low, 2 high) and the count.
second("sprt_three_decision", "backward recursion", function(i) {
  tests <- list(lines_of(i$pA0, i$pA1, i$alpha, i$beta), lines_of(i$pB0, i$pB1, i$alpha, i$beta))
  says <- function(test, n, x) if (x <= test$h0 + test$slope * n + near) 1 else if (x >= test$h1 + test$slope * n - near) 2 else 0
  at_end <- function(test, x) if (x <= test$slope * i$n_max + near) 1 else 2
  row <- function(p) {
    known <- new.env()
    from <- function(n, x, a, b) {
      if (a == 0 && n > 0) a <- says(tests[[1]], n, x)
      if (b == 0 && n > 0) b <- says(tests[[2]], n, x)
      reaches <- n == i$n_max && (a == 0 || b == 0)
      if (reaches) {
        if (a == 0) a <- at_end(tests[[1]], x)
        if (b == 0) b <- at_end(tests[[2]], x)
      }
      if (a > 0 && b > 0) return(c(a == 1 && b == 1, a == 2 && b == 1, a == 2 && b == 2, a == 1 && b == 2, n, reaches))
      key <- paste(n, x, a, b)
      if (is.null(known[[key]])) known[[key]] <- (1 - p) * from(n + 1, x, a, b) + p * from(n + 1, x + 1, a, b)
      known[[key]]
    }
    at <- from(0, 0, 0, 0)
    list(light = at[1], moderate = at[2], severe = at[3], conflict = at[4], asn = at[5], p_reach_nmax = at[6])
  }
  list(rows = lapply(num(i$ps), row))
})
second("fixed_plan_oc", "pbinom", function(i) list(p_low = pbinom(i$c, i$n, num(i$ps))))
