#include "wear/competing_endings.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace sparewell::wear {
namespace {

constexpr double hundred_years = 36525;
// What one interval may add to the error of all integrals together. Simpson's sum is at least so
// many times nearer than the trapezoid's, which it is compared with.
constexpr double tolerance = 3e-7;
constexpr double nearer = 60;
constexpr int deepest = 40;

/// One moment on the way: what is still in use, and the rates at which it ends then.
struct Moment {
  double days = 0;
  double in_use = 1;                                     ///< P(neither worn nor ended otherwise)
  double other_hazard = 0;                               ///< -log P(not ended otherwise)
  std::array<double, other_reasons.size()> incidence{};  ///< density of each other ending
  double total = 0;                                      ///< sum of incidence
};

class Incidence {
 public:
  Incidence(const UnitLife& life, const OtherEndings& others) : life_{&life}, others_{&others} {}

  EndingChances until(double days) {
    const Moment now = moment(0);
    const Moment end = moment(days);
    if (end.other_hazard > 0) add(now, end, 0);
    chances_.in_use = end.in_use;
    const double ended = 1 - end.in_use;
    const double otherwise = chances_.ended_otherwise();
    // Of a part in a drawer, rounding may have put more than all that ends.
    if (otherwise > ended) {
      for (double& chance : chances_.others) chance *= ended / otherwise;
    }
    chances_.worn = std::max(0.0, ended - otherwise);
    return chances_;
  }

 private:
  [[nodiscard]] Moment moment(double days) const {
    Moment made;
    made.days = days;
    for (const EndingRate& rate : others_->rates) made.other_hazard += rate.hazard(days);
    made.in_use = (1 - life_->chance_after(days)) * std::exp(-made.other_hazard);
    for (std::size_t i = 0; i < others_->rates.size(); ++i) {
      made.incidence[i] = made.in_use * others_->rates[i].per_day_after(days);
      made.total += made.incidence[i];
    }
    return made;
  }

  /// Adds the integral from a to b, halved until Simpson's sum is near enough.
  void add(const Moment& a, const Moment& b, int depth) {
    const double width = b.days - a.days;
    const Moment middle = moment(a.days + width / 2);
    // Incidence only falls, so the sums with either end bound the integral.
    const double bound = (a.in_use - b.in_use) * (b.other_hazard - a.other_hazard);
    const double simpson = width / 6 * (a.total + 4 * middle.total + b.total);
    const double trapezoid = width / 4 * (a.total + 2 * middle.total + b.total);
    const bool near = bound < 0.02 && std::abs(simpson - trapezoid) < nearer * tolerance;
    if (near || depth == deepest) {
      for (std::size_t i = 0; i < chances_.others.size(); ++i) {
        chances_.others[i] +=
            width / 6 * (a.incidence[i] + 4 * middle.incidence[i] + b.incidence[i]);
      }
      return;
    }
    add(a, middle, depth + 1);
    add(middle, b, depth + 1);
  }

  const UnitLife* life_;
  const OtherEndings* others_;
  EndingChances chances_;
};

}  // namespace

double EndingChances::ended_otherwise() const {
  return std::accumulate(others.begin(), others.end(), 0.0);
}

EndingChances ending_chances(const UnitLife& life, const OtherEndings& others, double days) {
  return Incidence{life, others}.until(days);
}

EndingChances eventual_endings(const UnitLife& life, const OtherEndings& others) {
  EndingChances chances = ending_chances(life, others, hundred_years);
  const double ended = chances.worn + chances.ended_otherwise();
  if (!(ended > 0)) return chances;
  chances.in_use = 0;
  chances.worn /= ended;
  for (double& chance : chances.others) chance /= ended;
  return chances;
}

}  // namespace sparewell::wear
