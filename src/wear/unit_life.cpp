#include "wear/unit_life.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <boost/math/tools/roots.hpp>

namespace sparewell::wear {
namespace {

constexpr int farthest_days = 36525;  // a hundred years
/// -log of the chance to last by the best estimate, where possible laws are averaged: densest where
/// most lives end, and so far out that little is left open by any law.
constexpr std::array<double, 14> averaged_at{1e-6, 1e-4, 2e-3, 0.02, 0.07, 0.18, 0.4,
                                             0.8,  1.4,  2.4,  4,    7,    14,   32};
constexpr int precise_bits = 22;  // of a wear: hundredths of a day in a hundred years

bool is_positive(double value) {
  return value > 0 && std::isfinite(value);
}

bool in_order(const std::vector<RateSpan>& spans) {
  return std::ranges::is_sorted(spans, {}, &RateSpan::from) &&
         std::ranges::all_of(spans, [](const RateSpan& s) { return s.rate >= 0; });
}

}  // namespace

UnitLife::UnitLife(Date today, double wear_age_days, double shape, double scale_days,
                   std::vector<RateSpan> future, Multiplier person)
    : today_{today},
      wear_age_{wear_age_days},
      shape_{shape},
      scale_{scale_days},
      future_{std::move(future)},
      person_{person} {
  if (!(wear_age_ >= 0) || !std::isfinite(wear_age_) || !is_positive(shape_) ||
      !is_positive(scale_)) {
    throw std::invalid_argument{"A unit's life needs a wear age, and a shape and scale above 0."};
  }
  if (future_.empty() || future_.front().from > today_ || !in_order(future_)) {
    throw std::invalid_argument{"Rates of wear must cover today onwards, in order of date."};
  }
}

UnitLife UnitLife::first_of(int units) const {
  UnitLife made = *this;
  made.scale_ *= std::pow(units, -1 / shape_);
  return made;
}

UnitLife UnitLife::having_lasted_until(Date day) const {
  const double wear = wear_until(day);
  std::vector<RateSpan> later;
  for (const RateSpan& span : future_) {
    if (span.from <= day) later.clear();
    later.push_back(span);
  }
  const bool exact = std::isinf(person_.rate());
  const Multiplier person =
      exact || !(wear > 0) ? person_
                           : Multiplier{person_.shape(), person_.rate() + baseline_hazard(wear)};
  return UnitLife{day, wear_age_ + wear, shape_, scale_, std::move(later), person};
}

double UnitLife::person_scale_days() const {
  return scale_ * std::pow(person_.mean(), -1 / shape_);
}

double UnitLife::wear_until(Date until) const {
  return wear_in(days_between(today_, until));
}

double UnitLife::days_within(std::size_t i, double days) const {
  const double from = std::max(0, days_between(today_, future_[i].from));
  const double to = i + 1 < future_.size()
                        ? std::min<double>(days, days_between(today_, future_[i + 1].from))
                        : days;
  return std::max(0.0, to - from);
}

double UnitLife::wear_in(double days) const {
  double wear = 0;
  for (std::size_t i = 0; i < future_.size(); ++i) wear += future_[i].rate * days_within(i, days);
  return wear;
}

UnitLife UnitLife::averaged_over(const PossibleLives& lives) const {
  UnitLife made = *this;
  made.averaged_.reset();
  std::vector<AveragedHazard::Point> points;
  for (const double hazard : averaged_at) {
    const double wear = best_wear(hazard);
    const double after = days_for_wear(wear);
    if (!(wear > 0) || !std::isfinite(after)) break;  // it will never be worn so far
    Eigen::ArrayXd spent(std::ssize(future_));
    for (std::size_t span = 0; span < future_.size(); ++span) {
      spent[static_cast<Eigen::Index>(span)] = days_within(span, after);
    }
    points.push_back({wear, hazard, std::move(spent)});
  }
  constexpr std::size_t fewest = 4;
  if (points.size() >= fewest) made.averaged_ = AveragedHazard::over(lives, points);
  return made;
}

double UnitLife::days_for_wear(double further) const {
  if (!(further > 0)) return 0;
  for (std::size_t i = 0; i < future_.size(); ++i) {
    const double from = std::max(0, days_between(today_, future_[i].from));
    const double rate = future_[i].rate;
    const double to = i + 1 < future_.size() ? days_between(today_, future_[i + 1].from) : HUGE_VAL;
    if (to <= from) continue;
    if (rate > 0 && further <= rate * (to - from)) return from + further / rate;
    if (rate > 0) further -= rate * (to - from);
  }
  return HUGE_VAL;
}

bool UnitLife::changes_between(double from_days, double to_days) const {
  return std::ranges::any_of(future_, [&](const RateSpan& span) {
    const double at = days_between(today_, span.from);
    return at > from_days && at < to_days;
  });
}

double UnitLife::baseline_hazard(double further) const {
  // By way of the age where there is one: the difference of two large hazards loses digits.
  return wear_age_ > 0 ? std::pow(wear_age_ / scale_, shape_) *
                             std::expm1(shape_ * std::log1p(further / wear_age_))
                       : std::pow(further / scale_, shape_);
}

double UnitLife::best_hazard(double further) const {
  const double hazard = baseline_hazard(further);
  return std::isnan(hazard) ? HUGE_VAL : person_.mixed_hazard(hazard);
}

double UnitLife::hazard(double further) const {
  const double best = best_hazard(further);
  return averaged_ ? averaged_->at(further, best) : best;
}

double UnitLife::chance_at_wear(double further) const {
  return further > 0 ? -std::expm1(-hazard(further)) : 0;
}

double UnitLife::chance_after(double days) const {
  return chance_at_wear(wear_in(days));
}

double UnitLife::chance_worn_by(Date day) const {
  return chance_at_wear(wear_until(day));
}

double UnitLife::best_wear(double mixed) const {
  const double hazard = person_.further_hazard(mixed);
  const double so_far = wear_age_ > 0 ? std::pow(wear_age_ / scale_, shape_) : 0;
  if (so_far > 0) return wear_age_ * std::expm1(std::log1p(hazard / so_far) / shape_);
  return std::max(0.0, scale_ * std::pow(hazard, 1 / shape_) - wear_age_);
}

double UnitLife::further_wear(double p) const {
  const double best = best_wear(-std::log1p(-p));
  if (!averaged_ || !(best > 0) || !std::isfinite(best)) return best;
  // The factor varies slowly, so the answer is near the best estimate's in the log.
  const double wanted = std::log(-std::log1p(-p));
  std::uintmax_t most_tries = 60;
  const auto [low, high] = boost::math::tools::bracket_and_solve_root(
      [&](double wear) { return std::log(hazard(wear)) - wanted; }, best, 1.5, true,
      boost::math::tools::eps_tolerance<double>{precise_bits}, most_tries);
  return 0.5 * (low + high);
}

std::optional<Date> UnitLife::worn_out_date(double p) const {
  if (!(p > 0 && p < 1)) throw std::invalid_argument{"A chance must lie between 0 and 1."};
  const Date last = today_ + days{farthest_days};
  double left = further_wear(p);
  Date day = last;
  for (std::size_t i = 0; i < future_.size(); ++i) {
    const Date from = std::max(today_, future_[i].from);
    const Date to = i + 1 < future_.size() ? future_[i + 1].from : last;
    if (to <= from) continue;
    const double wear = future_[i].rate * days_between(from, to);
    if (wear >= left) {
      const double needed = left > 0 ? std::ceil(left / future_[i].rate) : 0;
      day = from + days{static_cast<int>(std::min<double>(needed, farthest_days))};
      break;
    }
    left -= wear;
  }
  // Rounding may have put the day one off either way.
  day = std::min(day, last);
  while (day > today_ && chance_worn_by(day - days{1}) >= p) day -= days{1};
  while (day <= last && chance_worn_by(day) < p) day += days{1};
  if (day > last) return std::nullopt;
  return day;
}

WornOutDates worn_out_dates(const UnitLife& life) {
  WornOutDates dates;
  std::ranges::transform(standard_chances, dates.begin(),
                         [&](double p) { return life.worn_out_date(p); });
  return dates;
}

}  // namespace sparewell::wear
