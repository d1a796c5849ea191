# Rscript survreg.R ROWS.csv: prints the best time of twenty fits in seconds, then the estimates
# (intercept, coefficients, scale, log-likelihood), one number a line. Columns: time, event, a, b, c.
if (!suppressWarnings(suppressMessages(require(survival, quietly = TRUE)))) quit(status = 3)
rows <- read.csv(commandArgs(TRUE)[1])
fit <- NULL
seconds <- replicate(20, system.time(
  fit <<- survreg(Surv(time, event) ~ a + b + c, data = rows, dist = "weibull"))[["elapsed"]])
cat(sprintf("%.15g\n", c(min(seconds), fit$coefficients, fit$scale, fit$loglik[2])), sep = "")
