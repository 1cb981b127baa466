# Agreement of two readers.
second("kappa", "vcd::Kappa", function(i) {
  table <- do.call(rbind, lapply(i$table, num))
  weights <- given(i$weights, "none")
  found <- vcd::Kappa(table, weights = if (weights == "quadratic") "Fleiss-Cohen" else "Equal-Spacing")
  at <- unname(if (weights == "none") found$Unweighted else found$Weighted)
  reach <- qnorm((1 + conf(i)) / 2) * at[2]
  list(kappa = at[1], se = at[2], lo = at[1] - reach, hi = at[1] + reach)
})
