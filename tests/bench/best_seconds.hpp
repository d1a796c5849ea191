/// How long work takes at its best.
#pragma once

#include <algorithm>
#include <chrono>
#include <cmath>

namespace sparewell::bench {

/// Seconds of the quickest of so many runs.
template <class Work>
double best_seconds(int times, const Work& work) {
  double best = HUGE_VAL;
  for (int i = 0; i < times; ++i) {
    const auto start = std::chrono::steady_clock::now();
    work();
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    best = std::min(best, took.count());
  }
  return best;
}

}  // namespace sparewell::bench
