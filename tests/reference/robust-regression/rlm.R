# Fits straight lines by Huber's M-estimation with rlm of R's package MASS (psi.huber, scale by the
# MAD) and writes what it found with the data that were fitted (rlm.json) beside this script.
#   Rscript rlm.R
library(MASS)

here <- dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1]))
digits <- function(x) paste(sprintf("%.17g", x), collapse = ", ")

fit_line <- function(name, source, x, y) {
  x <- as.numeric(x)
  y <- as.numeric(y)
  # The stopping rule of rlm is tightened so that what is written is the fixed point.
  fit <- rlm(y ~ x, psi = psi.huber, scale.est = "MAD", acc = 1e-15, maxit = 2000)
  told <- summary(fit)
  paste0('  {\n    "name": "', name, '",\n    "source": "', source, '",\n    "x": [', digits(x),
         '],\n    "y": [', digits(y), '],\n    "intercept": ', digits(coef(fit)[1]),
         ',\n    "slope": ', digits(coef(fit)[2]), ',\n    "scale": ', digits(fit$s),
         ',\n    "sigma": ', digits(told$stddev),
         ',\n    "intercept_error": ', digits(told$coefficients[1, 2]),
         ',\n    "slope_error": ', digits(told$coefficients[2, 2]),
         ',\n    "covariance": ', digits(vcov(fit)[1, 2]), "\n  }")
}

from <- function(package, set) paste0("R package ", package, " ", packageVersion(package), ", data set ", set)
# Residuals of the third of Anscombe's sets are all but nought without its outlier.
fits <- c(
  fit_line("stackloss_air", from("datasets", "stackloss: stack.loss by Air.Flow"),
           stackloss$Air.Flow, stackloss$stack.loss),
  fit_line("stackloss_water", from("datasets", "stackloss: stack.loss by Water.Temp"),
           stackloss$Water.Temp, stackloss$stack.loss),
  fit_line("phones", from("MASS", "phones: calls by year"), phones$year, phones$calls),
  fit_line("hills", from("MASS", "hills: time by dist"), hills$dist, hills$time),
  fit_line("cars", from("datasets", "cars: dist by speed"), cars$speed, cars$dist),
  fit_line("anscombe_3", from("datasets", "anscombe: y3 by x3"), anscombe$x3, anscombe$y3),
  fit_line("mammals", from("MASS", "mammals: log(brain) by log(body)"), log(mammals$body), log(mammals$brain)))
writeLines(paste0("[\n", paste(fits, collapse = ",\n"), "\n]"), file.path(here, "rlm.json"))
