# Writes false_discovery.json: p values adjusted by Benjamini and Hochberg with p.adjust, and upper
# tails of the binomial law with binom.test, both of R's package stats.
#   Rscript false_discovery.R
here <- dirname(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE)[1]))
digits <- function(x) paste(sprintf("%.17g", x), collapse = ", ")

# The fifteen p values of table 1 in Benjamini and Hochberg (1995), from memory, out of order; and
# some with ties, a zero and a one.
vectors <- list(
  c(0.0459, 0.0001, 0.7590, 0.0004, 0.4262, 0.0019, 0.0095, 1.0000, 0.0201, 0.0278, 0.0298, 0.0344,
    0.3240, 0.5719, 0.6528),
  c(0.01, 0.04, 0.03, 0.04, 0, 1, 0.2, 0.01, 0.9),
  c(0.5),
  c(0.9, 0.8, 0.7, 0.95))
adjusted <- sapply(vectors, function(p) paste0(
  '    {"p": [', digits(p), '],\n     "adjusted": [', digits(p.adjust(p, method = "BH")), "]}"))

trials <- data.frame(count = c(3, 1, 5, 0, 12, 40, 9, 30), trials = c(9, 4, 5, 7, 60, 200, 10, 1000),
                     chance = c(0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.03, 0.1))
tails <- mapply(function(k, n, p) paste0(
  '    {"count": ', k, ', "trials": ', n, ', "chance": ', p, ', "tail": ',
  digits(binom.test(k, n, p, alternative = "greater")$p.value), "}"),
  trials$count, trials$trials, trials$chance)

writeLines(paste0('{\n  "source": "', R.version.string, '",\n  "benjamini_hochberg": [\n',
                  paste(adjusted, collapse = ",\n"), '\n  ],\n  "binomial": [\n',
                  paste(tails, collapse = ",\n"), "\n  ]\n}"),
           file.path(here, "false_discovery.json"))
