# Writes rate_ratio.json: the ratio of two rates with its exact interval by poisson.test of R's
# package stats.
#   Rscript rate_ratio.R
here <- dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1]))
number <- function(x) ifelse(is.finite(x), sprintf("%.17g", x), "null")

cases <- data.frame(exposed = c(4, 5, 0, 1, 12, 3, 1, 20), without = c(1, 0, 3, 1, 30, 3, 0, 2),
                    exposed_days = c(388, 200, 100, 27, 400, 500, 10, 365),
                    days_without = c(634, 800, 900, 1200, 1100, 500, 1400, 730),
                    level = c(0.95, 0.95, 0.95, 0.8, 0.95, 0.5, 0.95, 0.99))
lines <- mapply(function(x1, x0, t1, t0, level) {
  told <- poisson.test(c(x1, x0), c(t1, t0), conf.level = level)
  paste0('    {"exposed_onsets": ', x1, ', "onsets": ', x1 + x0, ', "exposed_days": ', t1,
         ', "days": ', t1 + t0, ', "coverage": ', level, ',\n     "estimate": ',
         number(told$estimate), ', "low": ', number(told$conf.int[1]), ', "high": ',
         number(told$conf.int[2]), "}")
}, cases$exposed, cases$without, cases$exposed_days, cases$days_without, cases$level)
writeLines(paste0('{\n  "source": "', R.version.string, '",\n  "rates": [\n',
                  paste(lines, collapse = ",\n"), "\n  ]\n}"), file.path(here, "rate_ratio.json"))
