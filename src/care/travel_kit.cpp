#include "care/travel_kit.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

namespace sparewell::care {
namespace {

constexpr double rounding = 1e-12;
constexpr int kits_to_look_at = 2'000'000;

bool reaches(double assurance, double wanted) {
  return assurance >= wanted - rounding;
}

SpareKit kit_of(std::span<const SpareNeed> needs, std::vector<int> spares, double wanted) {
  SpareKit made{std::move(spares), 0, 0, false};
  made.assurance = assurance(needs, made.spares);
  for (std::size_t i = 0; i < needs.size(); ++i) made.cost += needs[i].cost * made.spares[i];
  made.reached = reaches(made.assurance, wanted);
  return made;
}

int pieces(const std::vector<int>& spares) {
  return std::accumulate(spares.begin(), spares.end(), 0);
}

/// Every kit that costs no more than the best one so far, need by need.
class Search {
 public:
  Search(std::span<const SpareNeed> needs, double wanted, SpareKit best)
      : needs_{needs},
        wanted_{wanted},
        best_{std::move(best)},
        at_best_(needs.size() + 1, 1.0),
        spares_(needs.size(), 0) {
    for (std::size_t i = needs.size(); i-- > 0;) {
      at_best_[i] = at_best_[i + 1] * assurance(needs[i], most_spares);
    }
  }

  SpareKit found() {
    const SpareKit before = best_;
    look(0, 1, 0);
    return looked_at_ > kits_to_look_at ? before : best_;
  }

 private:
  void look(std::size_t need, double so_far, double cost) {
    if (++looked_at_ > kits_to_look_at) return;
    if (cost > best_.cost + rounding || !reaches(so_far * at_best_[need], wanted_)) return;
    if (need == needs_.size()) {
      auto kit = kit_of(needs_, spares_, wanted_);
      if (is_better(kit)) best_ = std::move(kit);
      return;
    }
    for (int spares = 0; spares <= most_spares; ++spares) {
      spares_[need] = spares;
      look(need + 1, so_far * assurance(needs_[need], spares), cost + needs_[need].cost * spares);
    }
    spares_[need] = 0;
  }

  [[nodiscard]] bool is_better(const SpareKit& kit) const {
    if (std::abs(kit.cost - best_.cost) > rounding) return kit.cost < best_.cost;
    const int more = pieces(kit.spares) - pieces(best_.spares);
    return more != 0 ? more < 0 : kit.assurance > best_.assurance;
  }

  std::span<const SpareNeed> needs_;
  double wanted_;
  SpareKit best_;
  std::vector<double> at_best_;  ///< the most that the needs from there on can give
  std::vector<int> spares_;
  int looked_at_ = 0;
};

}  // namespace

double assurance(const SpareNeed& need, int spares) {
  const int beside = need.carried + spares;
  const double alone = need.failures.at_most(beside);
  const auto at = static_cast<std::size_t>(beside);
  return at < need.resupplied.size() ? std::max(alone, need.resupplied[at]) : alone;
}

double assurance(std::span<const SpareNeed> needs, std::span<const int> spares) {
  double product = 1;
  for (std::size_t i = 0; i < needs.size(); ++i) product *= assurance(needs[i], spares[i]);
  return product;
}

SpareKit kit_by_margins(std::span<const SpareNeed> needs, double wanted) {
  if (!(wanted > 0 && wanted < 1)) {
    throw std::invalid_argument{"the wanted assurance lies between 0 and 1"};
  }
  std::vector<int> spares(needs.size(), 0);
  while (!reaches(assurance(needs, spares), wanted)) {
    std::size_t best = needs.size();
    double best_gain = 0;
    for (std::size_t i = 0; i < needs.size(); ++i) {
      if (spares[i] >= most_spares) continue;
      const double gain = (std::log(assurance(needs[i], spares[i] + 1)) -
                           std::log(assurance(needs[i], spares[i]))) /
                          needs[i].cost;
      if (!(gain > best_gain)) continue;
      best = i;
      best_gain = gain;
    }
    if (best == needs.size()) break;
    ++spares[best];
  }
  return kit_of(needs, std::move(spares), wanted);
}

SpareKit cheapest_kit(std::span<const SpareNeed> needs, double wanted) {
  auto kit = kit_by_margins(needs, wanted);
  if (!kit.reached) return kit;
  return Search{needs, wanted, std::move(kit)}.found();
}

}  // namespace sparewell::care
