# Fits Weibull accelerated-failure-time models with survreg of R's package survival and writes the
# estimates (survreg.json) and the data they came from (one CSV a data set) beside this script.
#   Rscript survreg.R
library(survival)

here <- dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1]))
digits <- function(x) paste(sprintf("%.15g", x), collapse = ", ")
text <- function(x) paste0('"', x, '"', collapse = ", ")

# The data are read back before the fit, so that the numbers in the file are those that were fitted.
fit_data <- function(name, source, data, with_file = TRUE) {
  if (with_file) {
    file <- file.path(here, paste0(name, ".csv"))
    write.csv(data, file, row.names = FALSE, quote = FALSE)
    data <- read.csv(file, check.names = FALSE)
  }
  covariates <- setdiff(names(data), c("time", "event"))
  z <- as.matrix(data[covariates])
  model <- if (length(covariates)) Surv(data$time, data$event) ~ z else Surv(data$time, data$event) ~ 1
  fit <- survreg(model, dist = "weibull",
                 control = survreg.control(rel.tolerance = 1e-14, maxiter = 200))
  errors <- sqrt(diag(fit$var))
  p <- length(covariates)
  paste0(
    "  {\n",
    '    "name": "', name, '",\n',
    '    "source": "', source, '",\n',
    '    "covariates": [', if (p) text(covariates) else "", "],\n",
    '    "n": ', nrow(data), ",\n",
    '    "events": ', sum(data$event), ",\n",
    '    "intercept": ', digits(fit$coefficients[1]), ",\n",
    '    "coefficients": [', if (p) digits(fit$coefficients[-1]) else "", "],\n",
    '    "scale": ', digits(fit$scale), ",\n",
    '    "intercept_error": ', digits(errors[1]), ",\n",
    '    "coefficient_errors": [', if (p) digits(errors[1 + seq_len(p)]) else "", "],\n",
    '    "log_scale_error": ', digits(errors[p + 2]), ",\n",
    '    "log_likelihood": ', digits(fit$loglik[2]), "\n  }")
}

dummies <- function(f) {
  m <- model.matrix(~f)[, -1, drop = FALSE]
  colnames(m) <- levels(f)[-1]
  as.data.frame(m)
}

ovarian_data <- with(survival::ovarian, data.frame(time = futime, event = fustat, age = age, rx = rx, ecog.ps = ecog.ps))
lung_data <- with(na.omit(survival::lung[c("time", "status", "age", "sex", "ph.ecog")]),
                  data.frame(time = time, event = status - 1, age = age, sex = sex, ph.ecog = ph.ecog))
veteran_data <- with(survival::veteran, data.frame(time = time, event = status, trt = trt, karno = karno, age = age, dummies(celltype)))
kidney_data <- with(survival::kidney, data.frame(time = time, event = status, age = age, sex = sex, dummies(disease)))

# The minimal standard generator of Park and Miller: exact in doubles, so the same rows can be made
# elsewhere (std::minstd_rand0). Five numbers a row.
simulated_data <- function(rows, seed) {
  state <- seed
  u <- numeric(5 * rows)
  for (i in seq_along(u)) {
    state <- (16807 * state) %% 2147483647
    u[i] <- state / 2147483647
  }
  u <- matrix(u, ncol = 5, byrow = TRUE)
  kneeling <- 4 * u[, 1]
  sport <- as.numeric(u[, 2] < 0.3)
  level <- floor(5 * u[, 3]) - 2
  life <- 300 * exp(-0.15 * kneeling - 0.3 * sport - 0.1 * level) * (-log(u[, 4]))^(1 / 2.2)
  end <- 800 * u[, 5]
  data.frame(time = pmin(life, end), event = as.numeric(life <= end), kneeling = kneeling,
             sport = sport, level = level)
}

from <- function(set) paste0("R package survival ", packageVersion("survival"), ", data set ", set)
fits <- c(
  fit_data("ovarian", from("ovarian"), ovarian_data),
  fit_data("ovarian_life_only", from("ovarian"), ovarian_data[c("time", "event")]),
  fit_data("lung", from("lung, rows without missing values"), lung_data),
  fit_data("veteran", from("veteran, squamous as reference cell type"), veteran_data),
  fit_data("kidney", from("kidney, disease Other as reference"), kidney_data),
  fit_data("simulated", "20000 rows simulated by survreg.R, seed 20251", simulated_data(20000, 20251), FALSE))
writeLines(paste0("[\n", paste(fits, collapse = ",\n"), "\n]"), file.path(here, "survreg.json"))
