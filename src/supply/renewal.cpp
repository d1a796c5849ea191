#include "supply/renewal.hpp"

#include <algorithm>
#include <cmath>

#include "wear/competing_endings.hpp"

namespace sparewell::supply {
namespace {

// A chance of so many replacements that no order depends on it.
constexpr double unseen = 1e-9;
// The sums below are made with this many cells and twice as many, and extrapolated.
constexpr int least_terms = 3;
constexpr int most_terms = 256;
// Stands for the wear of a part in a drawer: so little that only losses count.
constexpr double no_wear = 1e-12;

constexpr bool brings_same_item(EndReason reason) {
  return std::ranges::find(same_item_reasons, reason) != same_item_reasons.end();
}

/// -log of the chances that until then it has not been lost or recalled, and that nothing has ended
/// the line.
struct Hazards {
  double loss = 0;
  double leaving = 0;
};

Hazards hazards_of(const wear::OtherEndings& others, double days) {
  Hazards hazards;
  double behind = 0;
  double logarithm = 0;
  for (std::size_t i = 0; i < others.rates.size(); ++i) {
    const wear::EndingRate& rate = others.rates[i];
    if (!(rate.endings > 0)) continue;
    // The rates of one kind mostly have the same days behind them, and this is asked very often.
    if (rate.days != behind) logarithm = std::log1p(days / rate.days);
    behind = rate.days;
    (brings_same_item(wear::other_reasons[i]) ? hazards.loss : hazards.leaving) +=
        rate.endings * logarithm;
  }
  return hazards;
}

double losses_per_day(const wear::OtherEndings& others) {
  double rate = 0;
  for (const EndReason reason : same_item_reasons) rate += others.of(reason).per_day();
  return rate;
}

/// What can have happened to the unit in so many days.
struct Moment {
  double days = 0;
  double replaced = 0;  ///< P(worn out, lost or recalled by then)
  double leaving_hazard = 0;
};

Moment moment_after(const wear::UnitLife& life, const wear::OtherEndings& others, double days) {
  const Hazards hazards = hazards_of(others, days);
  return {days, 1 - (1 - life.chance_after(days)) * std::exp(-hazards.loss), hazards.leaving};
}

/// A unit at the ends of equal steps of wear until the end of the interval; of time, when it is not
/// worn at all.
struct Path {
  std::vector<double> replaced;  ///< P(worn out, lost or recalled by then)
  std::vector<double> stays;     ///< P(nothing has ended the line by then)

  [[nodiscard]] std::size_t cells(std::size_t stride) const {
    return (replaced.size() - 1) / stride;
  }
  /// Of cell 0, 1, ..., each `stride` steps long.
  [[nodiscard]] double replaced_in(std::size_t cell, std::size_t stride) const {
    return replaced[(cell + 1) * stride] - replaced[cell * stride];
  }
  [[nodiscard]] double stays_in(std::size_t cell, std::size_t stride) const {
    return (stays[cell * stride] + stays[(cell + 1) * stride]) / 2;
  }
};

/// `end` is what the last step leads to.
Path path_of(const wear::UnitLife& life, const wear::OtherEndings& others, const Moment& end,
             double wear, int steps) {
  Path path;
  path.replaced.reserve(static_cast<std::size_t>(steps) + 1);
  path.stays.reserve(static_cast<std::size_t>(steps) + 1);
  path.replaced.push_back(0);
  path.stays.push_back(1);
  for (int i = 1; i <= steps; ++i) {
    const double days = wear > 0 ? life.days_for_wear(wear * i / steps) : end.days * i / steps;
    const Moment moment = i < steps ? moment_after(life, others, days) : end;
    path.replaced.push_back(moment.replaced);
    path.stays.push_back(std::exp(-moment.leaving_hazard));
  }
  return path;
}

/// The error of the sums below falls with the square of the step: Richardson's extrapolation.
double extrapolated(double fine, double coarse) {
  return fine + (fine - coarse) / 3;
}

double first_tail(const Path& path, std::size_t stride) {
  double tail = 0;
  for (std::size_t cell = 0; cell < path.cells(stride); ++cell) {
    tail += path.replaced_in(cell, stride) * path.stays_in(cell, stride);
  }
  return tail;
}

/// P(N >= 2), P(N >= 3), ...: the unit is replaced in one cell, taken at its middle, and the n-th
/// replacement falls into a later one, which counts when the line has not ended by then. Abel's
/// summation turns what the line loses from cell to cell into weights of the cells' ends, and what
/// has the same distance from first replacement to cell's end is looked up once.
std::vector<double> later_tails(const FreshTails& fresh, const Path& path, std::size_t stride,
                                double horizon) {
  const std::size_t cells = path.cells(stride);
  std::vector<double> end_weights;
  end_weights.reserve(cells);
  for (std::size_t cell = 0; cell + 1 < cells; ++cell) {
    end_weights.push_back(path.stays_in(cell, stride) - path.stays_in(cell + 1, stride));
  }
  end_weights.push_back(path.stays_in(cells - 1, stride));

  std::vector<double> tails(static_cast<std::size_t>(fresh.most()), 0.0);
  for (std::size_t distance = 0; distance < cells; ++distance) {
    double weight = 0;
    for (std::size_t cell = 0; cell + distance < cells; ++cell) {
      weight += path.replaced_in(cell, stride) * end_weights[cell + distance];
    }
    if (!(weight > 0)) continue;
    const double middle = static_cast<double>(distance) + 0.5;
    fresh.add_tails(horizon * middle / static_cast<double>(cells), weight, tails);
  }
  return tails;
}

int terms_for(double chance_of_second, double horizon, double shape, double leaving) {
  const double wanted =
      (6 + 3 * shape) * std::max(std::cbrt(chance_of_second), horizon / 2) + 2 * leaving;
  return std::clamp(static_cast<int>(std::ceil(wanted)), least_terms, most_terms);
}

/// Turns tails P(N >= 1), P(N >= 2), ... into masses whose sum is 1 by construction.
Pmf from_tails(const std::vector<double>& tails) {
  std::vector<double> mass(tails.size() + 1);
  double before = 1;
  for (std::size_t n = 0; n < tails.size(); ++n) {
    const double tail = std::clamp(tails[n], 0.0, before);
    mass[n] = before - tail;
    before = tail;
  }
  mass.back() = before;
  return Pmf{std::move(mass)};
}

}  // namespace

double leaving_hazard(const wear::OtherEndings& others, double days) {
  return hazards_of(others, days).leaving;
}

Pmf replacements(const wear::UnitLife& life, Date end, FreshCountsCache& fresh,
                 const wear::OtherEndings& others) {
  const double days = days_between(life.today(), end);
  if (!(days > 0)) return Pmf{};
  const double wear = life.wear_until(end);
  const double losses = losses_per_day(others) * days;
  const double horizon = std::max(wear / life.person_scale_days(), no_wear);
  const Moment at_end = moment_after(life, others, days);
  const double second_at_most =
      at_end.replaced * -std::expm1(-std::pow(horizon, life.shape()) - losses);
  const int terms = second_at_most < unseen
                        ? least_terms
                        : terms_for(second_at_most, horizon, life.shape(), at_end.leaving_hazard);
  const Path path = path_of(life, others, at_end, wear, 2 * terms);
  const double first = extrapolated(first_tail(path, 1), first_tail(path, 2));
  if (second_at_most < unseen) return from_tails({first});

  const FreshTails later = fresh.covering(life.shape(), horizon, losses / horizon);
  std::vector<double> tails = later_tails(later, path, 1, horizon);
  const auto coarse = later_tails(later, path, 2, horizon);
  for (std::size_t n = 0; n < tails.size(); ++n) tails[n] = extrapolated(tails[n], coarse[n]);
  tails.insert(tails.begin(), first);
  return from_tails(tails);
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
