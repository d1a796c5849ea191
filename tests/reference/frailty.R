# Maximises the marginal likelihood of a Weibull life with a gamma multiplier on the hazard shared
# within groups, written out here from its formula, with optim and nlm and numeric gradients: a check
# that is independent of the program's analytic Newton search. Writes frailty.json and the data
# (frailty_kidney.csv, frailty_rats.csv) beside this script. The data are those of the same names in
# R's package survival.
#   Rscript frailty.R
library(survival)

here <- dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1]))
digits <- function(x) paste(sprintf("%.15g", x), collapse = ", ")
text <- function(x) paste0('"', x, '"', collapse = ", ")

# par = (log shape, intercept, coefficients, log theta); log T = intercept + coefficients . z + error.
# A group with D events and summed cumulative hazard H adds the log baseline hazards at its events and
#   lgamma(1/theta + D) - lgamma(1/theta) + log(1/theta) / theta - (1/theta + D) log(1/theta + H).
minus_log_likelihood <- function(par, time, event, z, group) {
  p <- ncol(z)
  shape <- exp(par[1])
  scale <- exp(par[2] + if (p) as.vector(z %*% par[2 + seq_len(p)]) else 0)
  a <- exp(-par[p + 3])
  h <- (time / scale)^shape
  d <- tapply(event, group, sum)
  sum_h <- tapply(h, group, sum)
  log_hazard <- log(shape) - log(scale) + (shape - 1) * log(time / scale)
  -(sum(event * log_hazard) +
      sum(lgamma(a + d) - lgamma(a) + a * log(a) - (a + d) * log(a + sum_h)))
}

# Central differences with Richardson's extrapolation.
gradient <- function(f, x) {
  sapply(seq_along(x), function(i) {
    at <- function(h) { x[i] <- x[i] + h; f(x) }
    slope <- function(h) (at(h) - at(-h)) / (2 * h)
    (4 * slope(1e-4) - slope(2e-4)) / 3
  })
}
hessian <- function(f, x) {
  m <- sapply(seq_along(x), function(i) {
    at <- function(h) { x[i] <- x[i] + h; gradient(f, x) }
    slope <- function(h) (at(h) - at(-h)) / (2 * h)
    (4 * slope(1e-3) - slope(2e-3)) / 3
  })
  (m + t(m)) / 2
}

fit_data <- function(name, source, data) {
  file <- file.path(here, paste0(name, ".csv"))
  write.csv(data, file, row.names = FALSE, quote = FALSE)
  covariates <- setdiff(names(data), c("time", "event", "id"))
  z <- as.matrix(data[covariates])
  plain <- survreg(Surv(data$time, data$event) ~ z, dist = "weibull")
  f <- function(par) minus_log_likelihood(par, data$time, data$event, z, data$id)
  par <- c(-log(plain$scale), plain$coefficients, log(0.5))
  for (round in 1:3) {
    par <- optim(par, f, function(x) gradient(f, x), method = "BFGS",
                 control = list(reltol = 1e-15, maxit = 2000))$par
    par <- nlm(f, par, gradtol = 1e-10, steptol = 1e-12, iterlim = 1000)$estimate
  }
  # Two Newton steps on the numeric derivatives take away what is left of the search's tolerance.
  for (round in 1:2) par <- par - solve(hessian(f, par), gradient(f, par))
  errors <- sqrt(diag(solve(hessian(f, par))))
  p <- length(covariates)
  cat(name, "largest gradient", max(abs(gradient(f, par))), "theta", exp(par[p + 3]), "\n")
  paste0(
    "  {\n",
    '    "name": "', name, '",\n',
    '    "source": "', source, '",\n',
    '    "covariates": [', text(covariates), "],\n",
    '    "n": ', nrow(data), ",\n",
    '    "events": ', sum(data$event), ",\n",
    '    "groups": ', length(unique(data$id)), ",\n",
    '    "intercept": ', digits(par[2]), ",\n",
    '    "coefficients": [', digits(par[2 + seq_len(p)]), "],\n",
    '    "shape": ', digits(exp(par[1])), ",\n",
    '    "theta": ', digits(exp(par[p + 3])), ",\n",
    '    "intercept_error": ', digits(errors[2]), ",\n",
    '    "coefficient_errors": [', digits(errors[2 + seq_len(p)]), "],\n",
    '    "log_shape_error": ', digits(errors[1]), ",\n",
    '    "log_theta_error": ', digits(errors[p + 3]), ",\n",
    '    "log_likelihood": ', digits(-f(par)), "\n  }")
}

kidney_data <- with(survival::kidney, data.frame(time = time, event = status, id = id, age = age, sex = sex))
rats_data <- with(survival::rats, data.frame(time = time, event = status, id = litter, rx = rx, male = as.numeric(sex == "m")))

from <- function(set) paste0("R package survival ", packageVersion("survival"), ", data set ", set)
fits <- c(
  fit_data("frailty_kidney", from("kidney, groups: patients"), kidney_data),
  fit_data("frailty_rats", from("rats, groups: litters"), rats_data))
writeLines(paste0("[\n", paste(fits, collapse = ",\n"), "\n]"), file.path(here, "frailty.json"))
