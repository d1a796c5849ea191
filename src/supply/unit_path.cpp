#include "supply/unit_path.hpp"

#include <algorithm>
#include <cmath>

namespace sparewell::supply {
namespace {

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

}  // namespace

double losses_per_day(const wear::OtherEndings& others) {
  double rate = 0;
  for (const EndReason reason : same_item_reasons) rate += others.of(reason).per_day();
  return rate;
}

double leaving_hazard(const wear::OtherEndings& others, double days) {
  return hazards_of(others, days).leaving;
}

Moment moment_after(const wear::UnitLife& life, const wear::OtherEndings& others, double days) {
  const Hazards hazards = hazards_of(others, days);
  return {days, 1 - (1 - life.chance_after(days)) * std::exp(-hazards.loss), hazards.loss,
          hazards.leaving};
}

UnitPath::UnitPath(const wear::UnitLife& life, const wear::OtherEndings& others, const Moment& end,
                   double wear, int steps, const std::vector<wear::MultiplierPoint>& persons)
    : persons_{persons.size()} {
  const auto length = static_cast<std::size_t>(steps) + 1;
  replaced_.reserve(length);
  stays_.reserve(length);
  replaced_.push_back(0);
  stays_.push_back(1);
  if (persons_ > 1) {
    kept_.reserve(length * persons_);
    for (const auto& person : persons) kept_.push_back(person.weight);
  }
  for (int i = 1; i <= steps; ++i) {
    const double worn = wear * i / steps;
    const double days = wear > 0 ? life.days_for_wear(worn) : end.days * i / steps;
    const Moment moment = i < steps ? moment_after(life, others, days) : end;
    replaced_.push_back(moment.replaced);
    stays_.push_back(std::exp(-moment.leaving_hazard));
    if (persons_ <= 1) continue;
    const double hazard = worn > 0 ? life.baseline_hazard(worn) : 0;
    for (const auto& person : persons) {
      kept_.push_back(person.weight * std::exp(-person.value * hazard - moment.loss_hazard));
    }
  }
}

double UnitPath::replaced_in(std::size_t cell, std::size_t stride, std::size_t person) const {
  const double all = replaced_in(cell, stride);
  if (persons_ <= 1) return all;
  const double* from = &kept_[cell * stride * persons_];
  const double* to = &kept_[(cell + 1) * stride * persons_];
  double sum = 0;
  for (std::size_t i = 0; i < persons_; ++i) sum += from[i] - to[i];
  return sum > 0 ? all * (from[person] - to[person]) / sum : 0;
}

}  // namespace sparewell::supply
