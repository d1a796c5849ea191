# The order-up-to level of every stocked item from the lives of its units, as a script of base R.
# Simpler than the program: each unit is replaced at most once, and nothing but wear, losses and
# the lead time is looked at. Prints the seconds of the computation, writes targets.csv.
folder <- commandArgs(trailingOnly = TRUE)[1]
units <- read.csv(file.path(folder, "units.csv"), stringsAsFactors = FALSE)
items <- read.csv(file.path(folder, "items.csv"), stringsAsFactors = FALSE)
arrivals <- read.csv(file.path(folder, "arrivals.csv"), stringsAsFactors = FALSE)
started <- proc.time()[["elapsed"]]
by_item <- split(units, units$item)
arrivals_of <- split(arrivals, arrivals$item)

convolved <- function(chances) {
  mass <- 1
  for (p in chances[chances > 1e-12]) mass <- c(mass * (1 - p), 0) + c(0, mass * p)
  mass
}

target_of <- function(item, wait, service) {
  own <- by_item[[item]]
  if (is.null(own)) return(0)
  days <- arrivals_of[[item]]
  total <- 0
  for (i in seq_len(nrow(days))) {
    t <- wait + days$days[i]
    hazard <- ((own$age + own$rate * t) / own$scale)^own$shape - (own$age / own$scale)^own$shape
    lasts <- (own$b / (own$b + hazard))^own$a * exp(-own$loss * t)
    mass <- convolved(1 - lasts)
    n <- max(length(total), length(mass))
    total <- c(total, rep(0, n - length(total))) +
      days$chance[i] * c(mass, rep(0, n - length(mass)))
  }
  which(cumsum(total) >= service - 1e-12)[1] - 1
}

targets <- mapply(target_of, items$item, items$wait, items$service)
cat(proc.time()[["elapsed"]] - started, "\n")
write.csv(data.frame(item = items$item, target = targets), file.path(folder, "targets.csv"),
          row.names = FALSE, quote = FALSE)
