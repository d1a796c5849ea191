#include "supply/renewal.hpp"

#include <algorithm>
#include <cmath>

#include "supply/unit_path.hpp"
#include "wear/competing_endings.hpp"

namespace sparewell::supply {
namespace {

// A chance of so many replacements that no order depends on it.
constexpr double unseen = 1e-7;
// The sums below are made with this many cells and twice as many, and extrapolated.
constexpr int least_terms = 3;
constexpr int most_terms = 256;
// Stands for the wear of a part in a drawer: so little that only losses count.
constexpr double no_wear = 1e-12;

/// The error of the sums below falls with the square of the step: Richardson's extrapolation.
double extrapolated(double fine, double coarse) {
  return fine + (fine - coarse) / 3;
}

double first_tail(const UnitPath& path, std::size_t stride) {
  double tail = 0;
  for (std::size_t cell = 0; cell < path.cells(stride); ++cell) {
    tail += path.replaced_in(cell, stride) * path.stays_in(cell, stride);
  }
  return tail;
}

/// What is replaced after the first replacement: for each value of the person's multiplier the
/// counts of a fresh part, and the interval in units of its scale.
struct Later {
  FreshTails fresh;
  double horizon;
};

/// P(N >= 2), P(N >= 3), ...: the unit is replaced in one cell, taken at its middle, and the n-th
/// replacement falls into a later one, which counts when the line has not ended by then. Abel's
/// summation turns what the line loses from cell to cell into weights of the cells' ends, and what
/// has the same distance from first replacement to cell's end is looked up once.
std::vector<double> later_tails(const std::vector<Later>& later, const UnitPath& path,
                                std::size_t stride) {
  const std::size_t cells = path.cells(stride);
  std::vector<double> end_weights;
  end_weights.reserve(cells);
  for (std::size_t cell = 0; cell + 1 < cells; ++cell) {
    end_weights.push_back(path.stays_in(cell, stride) - path.stays_in(cell + 1, stride));
  }
  end_weights.push_back(path.stays_in(cells - 1, stride));

  int most = 0;
  for (const Later& each : later) most = std::max(most, each.fresh.most());
  std::vector<double> tails(static_cast<std::size_t>(most), 0.0);
  std::vector<double> replaced(cells);
  for (std::size_t person = 0; person < later.size(); ++person) {
    for (std::size_t cell = 0; cell < cells; ++cell) {
      replaced[cell] = path.replaced_in(cell, stride, person);
    }
    for (std::size_t distance = 0; distance < cells; ++distance) {
      double weight = 0;
      for (std::size_t cell = 0; cell + distance < cells; ++cell) {
        weight += replaced[cell] * end_weights[cell + distance];
      }
      if (!(weight > 0)) continue;
      const double middle = (static_cast<double>(distance) + 0.5) / static_cast<double>(cells);
      later[person].fresh.add_tails(later[person].horizon * middle, weight, tails);
    }
  }
  return tails;
}

int terms_for(double chance_of_second, double horizon, double shape, double leaving) {
  const double wanted =
      (6 + 3 * shape) * std::max(std::cbrt(chance_of_second), horizon / 2) + 2 * leaving;
  return std::clamp(static_cast<int>(std::ceil(wanted)), least_terms, most_terms);
}

/// So many values of a multiplier that what is left out does not show. Few do for the usual short
/// interval, where a second replacement is unlikely and its chance goes with the multiplier's
/// square; over a year a person may have four replacements or one.
int persons_for(double chance_of_second) {
  if (chance_of_second < 1e-6) return 1;
  if (chance_of_second < 2e-3) return 2;
  if (chance_of_second < 0.05) return 4;
  return chance_of_second < 0.3 ? 8 : 24;
}

/// Without those who are so rare that no chance depends on them, the outermost by far.
std::vector<wear::MultiplierPoint> persons_of(const wear::Multiplier& person, int points) {
  if (points == 1) return {{person.mean(), 1}};
  auto made = wear::multiplier_points(person, points);
  std::erase_if(made, [](const auto& point) { return point.weight < unseen; });
  return made;
}

std::vector<Later> later_of(const wear::UnitLife& life, double wear, double losses,
                            const std::vector<wear::MultiplierPoint>& persons,
                            FreshCountsCache& fresh) {
  const double per_wear = 1 / life.scale_days();
  std::vector<double> horizons;
  for (const auto& person : persons) {
    const double in_scales = wear * per_wear * std::pow(person.value, 1 / life.shape());
    horizons.push_back(std::max(in_scales, no_wear));
  }
  const double longest = std::ranges::max(horizons);
  std::vector<Later> made;
  made.reserve(horizons.size());
  for (const double horizon : horizons) {
    made.push_back({fresh.covering(life.shape(), longest, losses / horizon), horizon});
  }
  return made;
}

}  // namespace

std::vector<double> replacement_tails(const wear::UnitLife& life, double days,
                                      FreshCountsCache& fresh, const wear::OtherEndings& others) {
  if (!(days > 0)) return {};
  const double wear = life.wear_in(days);
  const double losses = losses_per_day(others) * days;
  const double horizon = std::max(wear / life.person_scale_days(), no_wear);
  const Moment at_end = moment_after(life, others, days);
  const double second_at_most =
      at_end.replaced * -std::expm1(-std::pow(horizon, life.shape()) - losses);
  const bool only_first = second_at_most < unseen;
  const int terms = only_first
                        ? least_terms
                        : terms_for(second_at_most, horizon, life.shape(), at_end.leaving_hazard);
  const auto persons = persons_of(life.person(), only_first ? 1 : persons_for(second_at_most));
  const UnitPath path{life, others, at_end, wear, 2 * terms, persons};
  const double first = extrapolated(first_tail(path, 1), first_tail(path, 2));
  if (only_first) return {first};

  const auto later = later_of(life, wear, losses, persons, fresh);
  std::vector<double> tails = later_tails(later, path, 1);
  const auto coarse = later_tails(later, path, 2);
  for (std::size_t n = 0; n < tails.size(); ++n) tails[n] = extrapolated(tails[n], coarse[n]);
  tails.insert(tails.begin(), first);
  return tails;
}

Pmf pmf_of_tails(const std::vector<double>& tails) {
  CountSum one;
  one.add(tails);
  return std::move(one).sum();
}

Pmf replacements(const wear::UnitLife& life, Date end, FreshCountsCache& fresh,
                 const wear::OtherEndings& others) {
  return pmf_of_tails(replacement_tails(life, days_between(life.today(), end), fresh, others));
}

double chance_of_replacement(const wear::UnitLife& life, Date end,
                             const wear::OtherEndings& others) {
  const auto chances =
      wear::ending_chances(life, others, std::max(0, days_between(life.today(), end)));
  double chance = chances.worn;
  for (const EndReason reason : same_item_reasons) chance += chances.of(reason);
  return chance;
}

double at_most_replaced(const wear::UnitLife& life, Date end, const wear::OtherEndings& others) {
  const double days = days_between(life.today(), end);
  return days > 0 ? moment_after(life, others, days).replaced : 0;
}

double expected_losses(const wear::OtherEndings& others, double days) {
  const double stays = (1 + 4 * std::exp(-leaving_hazard(others, days / 2)) +
                        std::exp(-leaving_hazard(others, days))) /
                       6;
  return losses_per_day(others) * days * stays;
}

}  // namespace sparewell::supply
